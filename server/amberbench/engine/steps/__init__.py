"""What is done at the bench, one folder a step: fields, plan, fold, prompts as far as it needs them."""
