"""Forms that testers fill in and send back."""
