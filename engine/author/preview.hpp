#pragma once

#include "engine/author/shelf.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/by_the_book.hpp"
#include "sim/reading/reference_reader.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace matula::author {

/// A test done by the book on the specimen of a case.
struct Shown {
  std::string test;
  std::string title;
  std::string word; ///< As the reference reader has it; a figure with its unit.
  std::optional<double>
      intensity; ///< Of a word, in grades: n is the middle of the word at place n, n + 0.5 the line.
  std::optional<double> from_line; ///< Grades to the nearest line between two words.
  std::optional<double> figure;    ///< Of a test that ends in one.
  std::string seen;                ///< What was seen, in the trade's words.
  std::string stopped_because;     ///< Empty when it could be done.
  bool other_bottle = false;       ///< A bottle was taken that is not out in the case.
  double took_ms = 0;
  std::shared_ptr<const bench::State> state; ///< The finished bench, for drawing,
  bench::VesselName vessel;                  ///< and what is read there.
};

/// The specimen as it stands at the bench.
struct Liquid {
  std::string colour;
  std::string clarity;
  std::vector<std::string> odours;
  double density_20 = 1; ///< Relative density 20/20 of what is in the container.
  double gravity = 1;    ///< What a float without error shows in it at 20 °C.
  std::optional<double>
      float_reads; ///< The case's own float in it, eye level, as it stands; nothing without room.
  double temperature_c = 20;
  double ph = 7;
  double osmolality = 0;          ///< mOsm/kg
  double chloride_mmol_per_l = 0; ///< As passed: what balances the charges.
};

/// What a case shows, one test after another: made anew when the specimen changes. `shelf` must outlive it.
class Preview {
public:
  /// `tests` are keys of procedures; those the case asks for when there are none. Takes as long as the
  /// specimen's way to the bench. Throws std::invalid_argument for a specimen that cannot be made.
  Preview(const Shelf& shelf, scenario::Scenario scenario, std::vector<std::string> tests = {});

  [[nodiscard]] const Liquid& liquid() const { return liquid_; }
  /// What of the specimen no patient passes, a sentence each.
  [[nodiscard]] const std::vector<std::string>& warnings() const { return warnings_; }
  [[nodiscard]] const std::vector<Shown>& shown() const { return shown_; }
  [[nodiscard]] bool done() const { return shown_.size() == tests_.size(); }
  /// Does the next test; nothing is added when `give_up` said so on the way. False when none was done.
  bool next(const scoring::GiveUp& give_up = {});
  /// The bench as laid out for the case, for drawing what the states hold.
  [[nodiscard]] const bench::Setup& setup() const { return setup_; }
  /// That bench before anything is done at it.
  [[nodiscard]] const bench::State& begun() const { return begun_; }
  /// That bench with the case's float at rest in a jar of the specimen; null when there is no room for it.
  [[nodiscard]] const std::shared_ptr<const bench::State>& floated() const { return floated_; }

private:
  const Shelf* shelf_;
  scenario::Scenario scenario_;
  std::vector<std::string> tests_;
  bench::Setup setup_;
  bench::State begun_;
  std::shared_ptr<const bench::State> floated_;
  Liquid liquid_;
  std::vector<std::string> warnings_;
  std::vector<Shown> shown_;
};

/// All of it at once.
[[nodiscard]] Preview preview(const Shelf& shelf, const scenario::Scenario& scenario,
                              std::vector<std::string> tests = {});

/// One test by the book on a bench that has been begun, with the case's own bottles where they do, with the
/// recipe's otherwise.
[[nodiscard]] Shown show_test(const Shelf& shelf, const bench::Setup& setup, const bench::State& begun,
                              const std::string& test, const scoring::GiveUp& give_up = {});

/// What is in the container of a bench that has been begun.
[[nodiscard]] Liquid show_liquid(const Shelf& shelf, const bench::Setup& setup, const bench::State& begun);

/// What a float without error, made for 20 °C, shows at that temperature in what is in the container.
[[nodiscard]] double gravity_of(const bench::State& begun, const bench::Setup& setup);

/// Grades to the nearest line between two of so many words.
[[nodiscard]] double from_line(double intensity, std::size_t words);

} // namespace matula::author
