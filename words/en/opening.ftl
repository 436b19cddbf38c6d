# What stands before all chapters.
opening-wrong = Files from before release { $version } ({ $day }) were wrong. { $changed }
opening-whose = Designed by { $maker }. Release { $version }, { $day }.
