#pragma once

#include "engine/attribution/deviations.hpp"

#include <optional>
#include <string>
#include <vector>

namespace matula::attribution {

/// All that was put into the tube of one kind of thing.
struct Total {
  double amount = 0;
  bool gently = true; ///< All of it.
  std::vector<const Deed*> deeds;
};

[[nodiscard]] Total total_of(const std::vector<Deed>& deeds, const Deed& like);
[[nodiscard]] std::vector<std::size_t> steps_of(const Total& total);
/// How far two amounts are apart: 0 the same, ln 2 twice or half.
[[nodiscard]] double apart(double found, double right);

/// A learner's deeds on one tube beside the recipe's, and where they differ. For the files of this room
/// alone: each part of the comparison stands in compare_PART.cpp.
class Comparison {
public:
  Comparison(const Method& method, const Work& work, const Trail& trail);

  std::vector<Deviation> find();

private:
  [[nodiscard]] std::string broken(const std::vector<std::string>& facts) const;
  /// Whether an amount is worth a look: broken rule or far from the recipe.
  [[nodiscard]] bool off(double found, double right, const std::vector<std::string>& facts) const;
  Deviation& note(std::string key, std::string words, std::vector<std::string> facts);
  [[nodiscard]] std::string name_of(const Deed& deed) const;
  /// "Acetic acid 10 %" is "acetic acid 10 %" there; "Benedict's reagent" and "SSA" keep their capitals.
  static std::string inside_a_sentence(std::string label);
  static std::vector<std::string> facts_of(const Deed& deed);
  /// The recipe's things, each once.
  [[nodiscard]] std::vector<const Deed*> things() const;
  [[nodiscard]] double waits_after(std::size_t r) const;
  [[nodiscard]] Change insertion(std::size_t r) const;
  [[nodiscard]] bool answered(std::size_t j) const;

  // compare_specimen.cpp
  /// The first step that takes from the specimen's own cup for this test.
  [[nodiscard]] std::optional<std::size_t> first_taken() const;
  void specimen();

  // compare_amounts.cpp
  void volumes();
  /// Everything half or twice as much is one thing to put right, not several that undo each other.
  bool all_in_proportion();
  void missing(const Deed& thing, const Total& right);
  void amount(const Deed& thing, const Total& found, const Total& right);
  void manner_of_pouring(const Deed& thing, const Total& found, const Total& right);
  void wrong_bottle(const Deed& thing, const Total& found);
  void dilution(const Deed& thing, const Total& found);
  void extras();

  // compare_heat.cpp
  /// "32 s in the flame instead of 2 min"
  static std::string say_heats(const Deed& found, const Deed& right, bool by_boiling);
  static std::string say_heat(const Deed& deed, bool by_boiling);
  void heating();

  // compare_mixing.cpp
  void mixing();
  [[nodiscard]] std::string mixing_left_out(std::size_t r) const;
  [[nodiscard]] std::string mixing_too_much() const;
  /// Whether the recipe mixes at all at the place where the learner's deed `j` stands.
  [[nodiscard]] bool mixed_there(std::size_t j) const;

  // compare_papers.cpp
  void others();

  // compare_times.cpp
  [[nodiscard]] double recipe_rest_s() const;
  void times();
  void reading_time();
  void between(const Deed& left, const Deed& right, double wait_s, std::size_t number);

  const Method& method_;
  const Work& work_;
  const Trail& trail_;
  std::vector<Deed> learner_;
  RecipeDeeds recipe_;
  std::vector<std::optional<std::size_t>> answers_;
  std::vector<Deviation> found_;
};

} // namespace matula::attribution
