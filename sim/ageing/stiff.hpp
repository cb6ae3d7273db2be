#pragma once

#include <functional>
#include <vector>

namespace matula::ageing {

/// An autonomous system y' = f(y) and its partial derivatives by rows.
struct StiffSystem {
  std::function<void(const double* y, double* change)> change;
  std::function<void(const double* y, double* partial)> jacobian;
};

struct Tolerance {
  double absolute = 1e-6; ///< A nanomol a litre, a cell a millilitre.
  double relative = 1e-4;
};

/// Moves `y` over `span` (> 0) by Rosenbrock's method of fourth order with step control (E. Hairer, G.
/// Wanner, Solving Ordinary Differential Equations II, 1996, by way of Boost.Odeint).
void integrate(const StiffSystem& system, std::vector<double>& y, double span, double first_step,
               const Tolerance& tolerance);

} // namespace matula::ageing
