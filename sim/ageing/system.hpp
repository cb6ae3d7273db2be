#pragma once

#include "sim/ageing/keeping.hpp"
#include "sim/ageing/laws.hpp"
#include "sim/matter/ph.hpp"
#include "sim/reaction/react.hpp"

#include <string>
#include <vector>

namespace matula::ageing {

/// One standing specimen as a system of ordinary differential equations, y' = f(y), time in hours. The state
/// holds only what can change: dissolved substances in mmol/L, organisms in 1e6/mL (resting, growing), cells
/// in 1e6/mL, what has gone to the air in mmol/L of liquid, water and oxygen taken up in mmol/L. The pH
/// follows from the charge balance at every evaluation.
class System {
public:
  System(const matter::Mixture& mixture, const matter::Catalogue& catalogue, const reaction::Network& network,
         const Laws& laws, const Keeping& keeping, const Gas& gas);

  [[nodiscard]] std::size_t size() const { return start_.size(); }
  [[nodiscard]] const std::vector<double>& start() const { return start_; }
  /// Key of a component that is a dissolved substance; empty for the others. For messages.
  [[nodiscard]] std::string name(std::size_t component) const {
    return component < species_.size() ? catalogue_.species[species_[component]].key : "";
  }

  /// Right-hand side; `y` and `change` hold size() numbers.
  void change(const double* y, double* change);

  /// Partial derivatives by rows, size() * size(): numeric where the laws stand, analytic through the pH at
  /// steady activities.
  void jacobian(const double* y, double* partial);

  /// Puts the state back into the mixture and adds to what has gone to the air.
  void store(const double* y, matter::Mixture& mixture, Gas& gas) const;

private:
  using Inhibitors = std::vector<const Inhibitor*>;
  /// A reaction with what stays the same while the specimen keeps its temperature.
  struct Going {
    const reaction::Reaction* row = nullptr;
    double constant = 0;                   ///< Rate constant, times light and air, for mmol/L/h.
    std::vector<matter::SpeciesId> inputs; ///< That its rate looks at and that can change.
  };
  struct LivingAct {
    const Act* act = nullptr;
    double speed = 0; ///< Strength at the temperature, divided by at_per_ml in 1e6/mL.
    Inhibitors inhibitors;
  };
  struct LivingOrganism {
    const Organism* organism = nullptr;
    std::size_t at = 0; ///< Resting; growing is next.
    double growth_per_h = 0;
    double cell_mg_per_1e9 = 0; ///< Mass of 1e9 resting cells, mg: what 1e6/mL weigh in a litre.
    double food_molar_mass = 1;
    Inhibitors inhibitors;
    std::vector<LivingAct> acts;
  };
  struct DyingCell {
    const Cell* cell = nullptr;
    std::size_t at = 0;
    double mg_per_1e9 = 0;
    std::vector<double> mmol_per_mg; ///< By release.
    double water_mmol_per_mg = 0;
    Inhibitors inhibitors;
    std::vector<LivingAct> acts;
  };
  struct Exchanged {
    const Volatile* row = nullptr;
    std::size_t index = 0; ///< In the laws.
    std::size_t at = 0;
    double per_h = 0;
    double rest_mmol_per_l = 0; ///< Of the volatile form, against the air as it was at first.
    double rest_per_gone = 0;   ///< Rise of that by what has gone under the lid.
  };

  void choose(const matter::Mixture& mixture, const Gas& gas);
  bool choose_acts(const std::vector<Act>& acts, std::vector<bool>& present,
                   std::vector<bool>& changed) const;
  void lay_out(const std::vector<bool>& changed, const matter::Mixture& mixture, const Gas& gas);
  void add_organism(const Organism& row, const matter::Mixture& mixture);
  void add_cell(const Cell& row, const matter::Mixture& mixture);
  void add_exchange(std::size_t index, const Gas& gas);
  [[nodiscard]] std::vector<LivingAct> living(const std::vector<Act>& acts, const std::string& key,
                                              double growth_share) const;
  [[nodiscard]] Inhibitors inhibitors_of(const std::string& what, const std::string& key) const;
  [[nodiscard]] double left(const Inhibitors& inhibitors) const;

  void load(const double* y);
  void rates(const double* y, double ph, double* change);
  [[nodiscard]] double rate(const Going& going, double ph) const;
  void react(double ph, double* change);
  void live(const double* y, double ph, double* change);
  void add_ph_partials(double* partial);
  void add_reaction_partials(const double* y, double* partial);
  void add_life_partials(const double* y, double* partial);
  [[nodiscard]] std::vector<matter::SpeciesId> inputs_of(const reaction::Reaction& row) const;
  void find_life_inputs();
  void grow(const LivingOrganism& living, const double* y, double ph, double crowd, double* change);
  void fall_apart(const DyingCell& dying, const double* y, double ph, double* change);
  void act(const LivingAct& living, double count, double ph, double* change);
  void exchange(const Exchanged& row, const double* y, double ph, double* change);
  void add(matter::SpeciesId id, double mmol_per_l_h, double* change) const;

  const matter::Catalogue& catalogue_;
  const reaction::Network& network_;
  const Laws& laws_;
  Keeping keeping_;
  reaction::Exposure exposure_;
  matter::Mixture scratch_; ///< One litre, so that its mmol are mmol/L.
  matter::Acidity acidity_;
  double temperature_c_;
  double specific_gravity_ = 1; ///< Of the liquid, at 20 °C.
  double volume_l_;
  std::vector<Going> reactions_;
  std::vector<matter::SpeciesId> species_;
  std::vector<std::ptrdiff_t> index_; ///< By species; negative for what stays.
  std::vector<LivingOrganism> organisms_;
  std::vector<DyingCell> cells_;
  std::vector<Exchanged> exchanges_;
  std::vector<std::size_t> life_inputs_; ///< States that organisms, cells and the exchange look at.
  std::size_t water_at_ = 0;
  std::size_t oxygen_at_ = 0;
  std::vector<double> start_;
  std::vector<double> base_;   ///< Scratch of the jacobian: rates,
  std::vector<double> moved_;  ///< with one state moved,
  std::vector<double> varied_; ///< and at another pH.
};

} // namespace matula::ageing
