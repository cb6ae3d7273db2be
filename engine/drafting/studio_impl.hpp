#pragma once

#include "engine/author/compose.hpp"
#include "engine/drafting/draft.hpp"
#include "engine/drafting/showing.hpp"
#include "engine/drafting/studio.hpp"
#include "engine/generator/people.hpp"

#include <map>

namespace matula::drafting {

/// What a composition came to, for the draft it was asked for.
struct Composed {
  unsigned version = 0;
  tl::expected<author::Composition, author::Refused> result;
};

/// What a studio keeps to itself. For this room only.
struct Studio::Impl {
  Impl(std::shared_ptr<const author::Shelf> the_shelf, generator::People the_people, const Folders& where)
      : shelf(std::move(the_shelf)), people(std::move(the_people)), folders(where),
        store(where.own, where.shipped), showing(*shelf) {}

  /// A test as it was last done, whatever the draft was then.
  struct Kept {
    author::Shown shown;
    std::shared_ptr<const bench::Setup> setup;
    unsigned version = 0;
  };

  std::shared_ptr<const author::Shelf> shelf;
  generator::People people;
  Folders folders;
  std::vector<PatternOffer> patterns;
  std::optional<Draft> draft;
  unsigned begun_at = 1;     ///< Its first version,
  unsigned last_version = 0; ///< and the newest.
  Store store;
  std::string name;
  Form form;
  Seen seen;
  std::shared_ptr<const Made> made; ///< As last taken over.
  std::map<std::string, Kept> kept;
  std::optional<Proposal> proposal;
  std::vector<author::Change> proposed;
  unsigned proposed_for = 0;
  std::vector<std::string> refusal;
  std::mutex guard; ///< Of `composed`.
  std::optional<Composed> composed;
  Showing showing;
  Newest composing; ///< Last: it uses the above.

  void begin(std::string text, std::string the_name);
  /// After any change of the draft: the form anew, and the bench after it.
  void renew();
  void judge(); ///< What the form says of the counter and the weights.
  std::string changed(const std::string& problem);
  void see();                   ///< `seen` from what was made.
  bool take_over_composition(); ///< True when there was one.
};

/// How the bench is said. Fills everything but what belongs to single tests.
void say_liquid(const author::Liquid& liquid, Seen& seen);
[[nodiscard]] SeenTest say_test(const author::Shown& shown, const author::Shelf& shelf);
inline constexpr const char* float_key = "specific_gravity";
[[nodiscard]] SeenTest say_float(const Made& made);
[[nodiscard]] Looks float_looks(const Made& made, const appearance::View& view);
[[nodiscard]] std::vector<SeenWorth> say_worth(const std::vector<author::LedgerWorth>& worth);
[[nodiscard]] Looks looks_of(const author::Shown& shown, const bench::Setup& setup,
                             const author::Shelf& shelf, const appearance::View& view);
[[nodiscard]] Proposal say_proposal(const author::Composition& made,
                                    const std::vector<author::Change>& changes, const std::string& text);

} // namespace matula::drafting
