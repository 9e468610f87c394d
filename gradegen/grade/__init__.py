"""From measures and a gauge to counts: every size graded, and the maker between the sizes."""

from gradegen.grade.between import Fitted, fit_body
from gradegen.grade.grading import grade_sizes

__all__ = ["Fitted", "fit_body", "grade_sizes"]
