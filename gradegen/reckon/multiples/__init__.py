"""Which foundation chains the rows allow."""
