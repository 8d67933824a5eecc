//! Outside checks of Risewright: see `tests/` beside this file, one file a question.
