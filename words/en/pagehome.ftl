# Words of pages: home.
pagehome-plans = Plans
pagehome-newest = The newest release first.
pagehome-none = No plan is published yet.
pagehome-welcome = Welcome
pagehome-new = What is new
pagehome-correction = Correction
pagehome-by = Plans by { $maker }.
pagehome-all = All plans of { $house }, the newest release first.
pagehome-release = Release { $release }, { $day } · open to all
pagehome-release-closed = Release { $release }, { $day } · files for supporters
pagehome-missing = There is no page here.
pagehome-missing-title = No such page
pagehome-missing-about = There is no page at this address.
pagehome-missing-why = The address may have changed with a release, or a letter of it went astray. { $link } are on one page.
pagehome-missing-plans = All plans
pagehome-all-of = All { $count } plans
