// Built as C++17: the vectors of Boost 1.74 know no later standard.
#define BOOST_UBLAS_NDEBUG // Its checks compare every product with a slower one.
#include "sim/ageing/stiff.hpp"

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wconversion"
#pragma GCC diagnostic ignored "-Wshadow"
#pragma GCC diagnostic ignored "-Wpedantic"
#include <boost/numeric/odeint/integrate/integrate_adaptive.hpp>
#include <boost/numeric/odeint/stepper/rosenbrock4.hpp>
#include <boost/numeric/odeint/stepper/rosenbrock4_controller.hpp>
#pragma GCC diagnostic pop

#include <algorithm>
#include <utility>

namespace matula::ageing {

void integrate(const StiffSystem& system, std::vector<double>& y, double span, double first_step,
               const Tolerance& tolerance) {
  namespace odeint = boost::numeric::odeint;
  using Vector = boost::numeric::ublas::vector<double>;
  using Matrix = boost::numeric::ublas::matrix<double>;
  Vector state(y.size());
  std::copy(y.begin(), y.end(), state.begin());
  const auto change = [&system](const Vector& at, Vector& slope, double) {
    system.change(&at.data()[0], &slope.data()[0]);
  };
  const auto jacobian = [&system](const Vector& at, Matrix& partial, double, Vector& by_time) {
    system.jacobian(&at.data()[0], &partial.data()[0]);
    std::fill(by_time.begin(), by_time.end(), 0.0);
  };
  odeint::rosenbrock4_controller<odeint::rosenbrock4<double>> stepper(tolerance.absolute, tolerance.relative);
  odeint::integrate_adaptive(stepper, std::make_pair(change, jacobian), state, 0.0, span,
                             std::min(first_step, span));
  std::copy(state.begin(), state.end(), y.begin());
}

} // namespace matula::ageing
