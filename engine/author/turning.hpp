#pragma once

#include "engine/author/preview.hpp"
#include "engine/author/wish.hpp"

namespace matula::author {

/// The case that is being made to look like something, and what can be turned on it.
class Turning {
public:
  Turning(const Shelf& shelf, scenario::Scenario base, scoring::GiveUp give_up);

  [[nodiscard]] const Shelf& shelf() const { return shelf_; }
  [[nodiscard]] const specimen::Specimen& specimen() const { return case_.specimen; }
  void replace(const specimen::Specimen& specimen);

  void set(const Place& place, double amount);
  /// Sets it for good: nothing turns it any more.
  void fix(const Place& place, double amount);
  [[nodiscard]] bool is_fixed(const Place& place) const;
  [[nodiscard]] double amount(const Place& place) const;
  void set_yellow(double a420);
  /// pH, and the bicarbonate that goes with it.
  void set_ph(double ph);

  /// All that goes with the concentration at `factor` times what it was in the base, sodium raised where the
  /// charges ask for it, the yellow with it when `with_yellow`.
  void concentrate(double factor, bool with_yellow);
  [[nodiscard]] double factor() const { return factor_; }
  /// The most that `concentrate` may be asked for before something goes beyond what a scenario may hold.
  [[nodiscard]] double most_factor() const;

  [[nodiscard]] double gravity();
  [[nodiscard]] double osmolality() const;
  [[nodiscard]] Shown show(const std::string& test);
  [[nodiscard]] std::string colour();
  [[nodiscard]] std::string clarity();
  [[nodiscard]] Liquid liquid();
  [[nodiscard]] int tubes() const { return tubes_; }
  /// Throws GivenUp when the work is to be given up.
  struct GivenUp {};
  void ask() const;

private:
  const bench::State& begun();
  void balance();

  const Shelf& shelf_;
  scenario::Scenario base_;
  scenario::Scenario case_;
  scoring::GiveUp give_up_;
  bench::Setup setup_;
  std::optional<bench::State> begun_; ///< Of the specimen as it is now.
  std::vector<Place> fixed_;
  double factor_ = 1;
  int tubes_ = 0;
};

} // namespace matula::author
