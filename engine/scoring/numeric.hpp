#pragma once

#include <optional>
#include <string>
#include <vector>

namespace matula::scoring {

/// Credit per mille for a number off by `error`: 1000 up to `full`, falling evenly to 0 at `none`.
[[nodiscard]] int credit_per_mille(double error, double full, double none);

/// Distance of an entry from what a scale shows, fair to a reader who rounds to the scale's `division`.
[[nodiscard]] double reading_error(double entry, double shown, double division);

/// A number as a learner writes it: surrounding blanks, a leading '+', a decimal comma and a trailing unit
/// are taken.
[[nodiscard]] std::optional<double> number_from_text(const std::string& text);

/// `credit` per mille of `possible` marks, rounded to whole marks.
[[nodiscard]] int marks_for(int credit_per_mille, int possible);

/// Splits `total` marks by `shares` into whole marks that add up to it (largest remainders first).
[[nodiscard]] std::vector<int> split_marks(int total, const std::vector<int>& shares);

} // namespace matula::scoring
