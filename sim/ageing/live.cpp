#define BOOST_UBLAS_NDEBUG // Its checks compare every product with a slower one.
#include "sim/ageing/live.hpp"

#include "sim/ageing/system.hpp"

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wconversion"
#pragma GCC diagnostic ignored "-Wshadow"
#pragma GCC diagnostic ignored "-Wpedantic"
#include <boost/numeric/odeint/integrate/integrate_adaptive.hpp>
#include <boost/numeric/odeint/stepper/rosenbrock4.hpp>
#include <boost/numeric/odeint/stepper/rosenbrock4_controller.hpp>
#pragma GCC diagnostic pop

#include <algorithm>

namespace matula::ageing {

namespace {

using Vector = boost::numeric::ublas::vector<double>;
using Matrix = boost::numeric::ublas::matrix<double>;

// Solver's own limits, not of the trade: within 0.1 % of another solver after days.
constexpr double absolute_tolerance = 1e-8;
constexpr double relative_tolerance = 1e-5;
constexpr double first_step_h = 0.02;

void open_or_close(Gas& gas, const Laws& laws, const Keeping& keeping, double temperature_c) {
  constexpr double gas_constant = 8.314462618; // J/mol/K, CODATA 2018.
  constexpr double kelvin = 273.15;
  gas.to_air_mmol.resize(laws.volatiles.size(), 0.0);
  if (keeping.open) {
    gas.lidded = false;
    gas.under_lid_mmol_per_l.clear();
    return;
  }
  if (gas.lidded) {
    return;
  }
  gas.lidded = true;
  for (const Volatile& row : laws.volatiles) {
    const double mol_m3 = row.in_air_pa / (gas_constant * (temperature_c + kelvin));
    gas.under_lid_mmol_per_l.push_back(mol_m3 * laws.air.headspace_per_liquid);
  }
}

} // namespace

void live(matter::Mixture& mixture, const matter::Catalogue& catalogue, const reaction::Network& network,
          const Laws& laws, const Keeping& keeping, double hours, Gas& gas) {
  open_or_close(gas, laws, keeping, mixture.temperature_c);
  if (mixture.empty() || hours <= 0) {
    return;
  }
  System system(mixture, catalogue, network, laws, keeping, gas);
  const std::size_t n = system.size();
  if (n == 0) {
    return;
  }
  Vector y(n);
  std::copy(system.start().begin(), system.start().end(), y.begin());
  const auto change = [&system](const Vector& at, Vector& slope, double) {
    system.change(&at.data()[0], &slope.data()[0]);
  };
  const auto jacobian = [&system](const Vector& at, Matrix& partial, double, Vector& by_time) {
    system.jacobian(&at.data()[0], &partial.data()[0]);
    std::fill(by_time.begin(), by_time.end(), 0.0);
  };
  namespace odeint = boost::numeric::odeint;
  odeint::rosenbrock4_controller<odeint::rosenbrock4<double>> stepper(absolute_tolerance,
                                                                      relative_tolerance);
  odeint::integrate_adaptive(stepper, std::make_pair(change, jacobian), y, 0.0, hours,
                             std::min(first_step_h, hours));
  system.store(&y.data()[0], mixture, gas);
}

} // namespace matula::ageing
