"""What every other room stands on: problems, descriptions of fields, checks, units, the parts of prompts and folds."""
