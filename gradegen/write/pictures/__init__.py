"""Pictures as pages show them: sized once for print, without what a camera or an editor wrote into them."""
