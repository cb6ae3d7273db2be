#include "sim/ageing/live.hpp"

#include "sim/optics/nature.hpp"

#include "sim/ageing/stiff.hpp"
#include "sim/ageing/system.hpp"

#include <vector>

namespace matula::ageing {

namespace {

constexpr double first_step_h = 0.5; // The solver's own first guess: it shortens what is too long.

void open_or_close(Gas& gas, const Laws& laws, const Keeping& keeping, double temperature_c) {
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
    const double mol_m3 =
        row.in_air_pa / (nature::gas_constant_j_per_mol_k * (temperature_c + nature::zero_c_in_kelvin));
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
  if (system.size() == 0) {
    return;
  }
  const StiffSystem stiff{[&](const double* y, double* change) { system.change(y, change); },
                          [&](const double* y, double* partial) { system.jacobian(y, partial); }};
  std::vector<double> y = system.start();
  integrate(stiff, y, hours, first_step_h, {});
  system.store(y.data(), mixture, gas);
}

} // namespace matula::ageing
