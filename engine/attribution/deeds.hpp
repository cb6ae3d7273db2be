#pragma once

#include "engine/attribution/replay.hpp"
#include "engine/scoring/rulebook.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace matula::attribution {

/// Between two deeds: from here on it is a wait and no pause. A proposal of this program.
inline constexpr double long_wait_s = 60;

/// One thing done to a tube, by a recipe or by a learner, in the same terms.
struct Deed {
  enum class Kind { Add, Hot, Mix, Other };
  Kind kind = Kind::Add;
  bool read_vessel = true; ///< To the tube that is read, or to one that feeds it.
  std::string what;   ///< Add: "specimen", "reagent" (the test's own), a bottle or vessel; Other: the verb.
  std::string bottle; ///< As it stands on the shelf.
  double amount = 0;  ///< Add: mL, a reagent by its strength; Other: seconds or drops.
  bool gently = false;
  bool diluted = false; ///< Specimen that came by way of a vessel with water in it.
  bool in_bath = false; ///< Hot.
  double bath_c = 0;
  double seconds = 0;       ///< Hot, Mix.
  double boiled_s = 0;      ///< Hot: seconds at the boil; of a recipe 0 when it does not ask for them.
  bool urine_inside = true; ///< Hot: whether specimen was in it by then.
  bench::Manner manner = bench::Manner::Swirl;
  double begin_s = 0; ///< Learner's.
  double end_s = 0;
  double waited_s = 0;            ///< Recipe: waiting between the deed before and this one.
  std::vector<std::size_t> steps; ///< Learner's.
  std::size_t next_step = 0;      ///< Learner's: the first step after it.
  procedure::RecipeStep recipe;   ///< Recipe's, with the learner's names of vessels and papers.

  [[nodiscard]] bool is_anchor() const { return kind != Kind::Mix; }
  [[nodiscard]] bool same_as(const Deed& other) const {
    return kind == other.kind && read_vessel == other.read_vessel && what == other.what;
  }
};

/// What a learner did, in order; `trail` is of the same work.
[[nodiscard]] std::vector<Deed> deeds_of(const Work& work, const Trail& trail, const scoring::TestRule& test);

/// What a recipe does, and the waiting after the last deed.
struct RecipeDeeds {
  std::vector<Deed> deeds;
  double last_wait_s = 0;
};
[[nodiscard]] RecipeDeeds deeds_of(const procedure::Recipe& recipe, const scoring::TestRule& test,
                                   const std::map<std::string, std::string>& names);

/// The learner's names of the recipe's vessels and papers, by what feeds what.
[[nodiscard]] std::map<std::string, std::string> names_for(const procedure::Recipe& recipe, const Work& work);

/// For each deed of the recipe the learner's that answers to it, if any: the longest run of the same deeds in
/// the same order.
[[nodiscard]] std::vector<std::optional<std::size_t>> aligned(const std::vector<Deed>& recipe,
                                                              const std::vector<Deed>& learner);

/// Stays in the flame (or the bath) with nothing done between them are one, where the recipe has one for
/// them.
void join_stays(std::vector<Deed>& learner, const std::vector<std::optional<std::size_t>>& answers);

} // namespace matula::attribution
