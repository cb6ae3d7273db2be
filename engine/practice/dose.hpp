#pragma once

#include <functional>
#include <vector>

namespace matula::practice {

/// How far too strong what comes of a dose is, in grades; rising with the dose.
using Off = std::function<double(double dose)>;

/// The nearest dose that was tried.
struct Dose {
  double amount = 0;
  double off = 0; ///< Grades.
  int tried = 0;
};

inline constexpr double near_enough = 0.02; // Grades; no eye parts two tubes so alike.
inline constexpr int most_tubes = 14;

/// Looks for the dose at which nothing is too strong or too weak: first between which rungs of the ladder
/// (rising, its first rung 0, two at least), then between them by the logarithm of the dose. Stops at
/// `enough` grades or after `most` tries.
[[nodiscard]] Dose find_dose(const std::vector<double>& ladder, const Off& off, double enough = near_enough,
                             int most = most_tubes);

} // namespace matula::practice
