"""Related counts put to OR-Tools' CP-SAT, which knows whole numbers only, from the words of their rules."""

from __future__ import annotations

from fractions import Fraction
from math import lcm
from typing import Any

from grade.joints import allowed

from gradegen.design.pattern import CountRule
from gradegen.grade.related.joint import Joint


class Second:
    """One group over some of its sizes; every answer is a new model."""

    def __init__(self, of: Joint, sizes: tuple[int, ...]) -> None:
        from ortools.sat.python import cp_model

        self.cp, self.of, self.sizes = cp_model, of, sizes
        numbers = [wish.inches * wish.weight * n for wish in of.wishes for n in (1, wish.off.number)]
        self.parts = lcm(*(Fraction(number).denominator for number in numbers)) if numbers else 1
        self.limits: dict[int, tuple[int, int]] = {}

    def model(self) -> tuple[Any, dict[Any, Any], dict[int, Any]]:
        model = self.cp.CpModel()
        n: dict[Any, Any] = {}
        for name, one in self.of.rules.items():
            for size in self.sizes:
                domain = self.cp.Domain.from_values(allowed(one, 600))
                n[name, size] = model.new_int_var_from_domain(domain, f"{name} {size}")
            self._tie(model, one, n)
        for held in self.of.held:
            if held.size in self.sizes:
                total = sum(int(times) * n[name, held.size] for name, times in held.sum.times.items())
                total = total + int(held.sum.number)
                model.add(total == 0) if held.is_equal else model.add(total <= 0)
        far: dict[int, Any] = {}
        for at, wish in enumerate(self.of.wishes):
            if wish.size in self.sizes:
                by = wish.inches * wish.weight * self.parts
                off = int(by) * n[wish.name, wish.size] + int(by * wish.off.number)
                far[at] = model.new_int_var(0, 10**9, f"far {at}")
                model.add(far[at] >= off)
                model.add(far[at] >= -off)
                n["off", at] = off
        return model, n, far

    def _tie(self, model: Any, one: CountRule, n: dict[Any, Any]) -> None:
        if one.even_steps:
            step = {"even": 2, "odd": 2}.get(one.parity, 1) if one.multiple % 2 else 1
            grown = model.new_int_var(-600, 600, f"grown {one.name}")
            for before, after in self.of.neighbours:
                units = model.new_int_var(-600, 600, f"step {one.name} {before}")
                model.add(n[one.name, after] - n[one.name, before] == one.multiple * step * units)
                model.add(units >= grown)
                model.add(units <= grown + 1)
        if one.centre == "same":
            odd = model.new_bool_var(f"odd {one.name}")
            for size in self.sizes:
                half = model.new_int_var(-600, 600, f"half {one.name} {size}")
                model.add(n[one.name, size] == one.multiple * (2 * half + odd) + one.plus)

    def _solved(self, model: Any) -> Any:
        solver = self.cp.CpSolver()
        solver.parameters.num_workers = 1
        status = solver.solve(model)
        assert status in (self.cp.OPTIMAL, self.cp.INFEASIBLE)
        return solver if status == self.cp.OPTIMAL else None

    def least_largest(self) -> Fraction | None:
        """The smallest largest drift; None where nothing holds."""
        model, _, far = self.model()
        largest = model.new_int_var(0, 10**9, "largest")
        for one in far.values():
            model.add(largest >= one)
        model.minimize(largest)
        solver = self._solved(model)
        return None if solver is None else Fraction(round(solver.objective_value), self.parts)

    def least_sum(self, largest: Fraction) -> Fraction:
        """The smallest sum of drifts, none larger than `largest`."""
        model, _, far = self.model()
        for one in far.values():
            model.add(one <= int(largest * self.parts))
        model.minimize(sum(far.values()))
        return Fraction(round(self._solved(model).objective_value), self.parts)

    def keep(self, size: int, largest: Fraction, total: Fraction) -> None:
        """From now on one size costs no more."""
        self.limits[size] = int(largest * self.parts), int(total * self.parts)

    def least_steps(self) -> Fraction:
        """The least that all steps are off those wanted, each size at the cost it may keep."""
        model, n, far = self.model()
        wishes = self.of.wishes
        for size, (largest, total) in self.limits.items():
            own = [one for at, one in far.items() if wishes[at].size == size]
            for one in own:
                model.add(one <= largest)
            model.add(sum(own) <= total)
        by_key = {(wish.name, wish.size): at for at, wish in enumerate(wishes)}
        bends = []
        for before, after in self.of.neighbours:
            for name in self.of.rules:
                if (name, before) in by_key and (name, after) in by_key:
                    off = n["off", by_key[name, after]] - n["off", by_key[name, before]]
                    bends.append(model.new_int_var(0, 10**9, f"bend {name} {before}"))
                    model.add(bends[-1] >= off)
                    model.add(bends[-1] >= -off)
        model.minimize(sum(bends))
        return Fraction(round(self._solved(model).objective_value), self.parts)
