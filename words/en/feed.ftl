# The feed of releases.
feed-release = { $plan } { $release }
feed-correction = { $plan } { $release }, a correction
