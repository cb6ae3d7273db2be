#include "engine/author/compose.hpp"

#include "engine/assets/world.hpp"
#include "engine/author/search.hpp"

#include <fmt/format.h>

#include <cmath>

namespace matula::author {

namespace {

/// Looks at what came out, as it would be written down, and says what is not as wished.
Refused missed(const Composition& made, const Wish& wish, const Search& search, const Shelf& shelf) {
  constexpr double half_a_division = 0.0005;
  constexpr double ph_slip = 0.1;
  Refused why = search.blocked();
  if (!why.empty()) {
    return why; // Nothing else was made on the urine that was meant.
  }
  for (const auto& shown : made.shown) {
    const auto& words = shelf.standards->rules.find_test(shown.test)->words;
    if (!shown.stopped_because.empty() || shown.word != words[wish.tests.at(shown.test).grade]) {
      why.push_back(search.why_missed(shown.test, shown));
    }
  }
  if (wish.gravity && std::abs(made.liquid.gravity - *wish.gravity) > half_a_division) {
    why.push_back(
        fmt::format("The specific gravity comes to {:.4f}, not {:.3f}: the tests pull it away each time.",
                    made.liquid.gravity, *wish.gravity));
  }
  if (wish.ph && std::abs(made.liquid.ph - *wish.ph) > ph_slip) {
    why.push_back(fmt::format("At the bench the pH is {:.2f}, not {:g}: the way there changes it.",
                              made.liquid.ph, *wish.ph));
  }
  if (wish.colour && made.liquid.colour != *wish.colour) {
    why.push_back(fmt::format("The urine looks {}, not {}: what else is in it colours it.",
                              made.liquid.colour, *wish.colour));
  }
  if (wish.clarity && made.liquid.clarity != *wish.clarity) {
    why.push_back(fmt::format("The urine is {}, not {}: what else hangs in it clouds it.",
                              made.liquid.clarity, *wish.clarity));
  }
  return why;
}

/// A urine that no kidney makes is none.
void kidney(const Composition& made, const Wish& wish, const Shelf& shelf, Refused& why) {
  const auto& range = shelf.physiology.whole.at("osmolality").range;
  if (wish.gravity && made.liquid.osmolality < range.low) {
    why.push_back(fmt::format(
        "The specific gravity {:.3f} cannot be had with these tests: what they need leaves {:.0f} "
        "mOsm/kg for the whole urine, and no kidney thins it below {:g}.",
        *wish.gravity, made.liquid.osmolality, range.low));
  }
  if (wish.gravity && made.liquid.osmolality > range.high) {
    why.push_back(fmt::format(
        "The specific gravity {:.3f} cannot be had with these tests: it takes {:.0f} mOsm/kg, and "
        "no kidney concentrates beyond {:g}. Protein, sugar or contrast medium weighs more.",
        *wish.gravity, made.liquid.osmolality, range.high));
  }
}

void warn(Composition& made, const Wish& wish, const Shelf& shelf) {
  for (const auto& shown : made.shown) {
    if (!wish.tests.at(shown.test).target && shown.from_line.value_or(1) < shelf.compose.clear_of_line) {
      made.warnings.push_back(fmt::format("{} reads {}, but only {:.2f} grades from the next word.",
                                          shown.title, shown.word, *shown.from_line));
    }
  }
  const auto said = implausible(made.specimen, shelf.physiology, *shelf.limits, shelf.world->catalogue);
  made.warnings.insert(made.warnings.end(), said.begin(), said.end());
}

Composition look_at(Turning& turning, const Wish& wish, int rounds) {
  Composition made;
  const auto& shelf = turning.shelf();
  turning.replace(as_written(turning.specimen(), *shelf.limits, shelf.world->catalogue));
  made.specimen = turning.specimen();
  made.liquid = turning.liquid();
  for (const auto& [test, want] : wish.tests) {
    made.shown.push_back(turning.show(test));
  }
  made.tubes = turning.tubes();
  made.rounds = rounds;
  return made;
}

} // namespace

tl::expected<Composition, Refused> compose(const Shelf& shelf, const scenario::Scenario& base,
                                           const Wish& wish, const scoring::GiveUp& give_up) {
  try {
    Turning turning(shelf, base, give_up);
    Search search(turning, wish);
    int rounds = 1;
    while (search.round() && rounds < shelf.compose.rounds) {
      ++rounds;
    }
    search.settle_gravity();
    auto made = look_at(turning, wish, rounds);
    auto why = missed(made, wish, search, shelf);
    if (why.empty()) {
      kidney(made, wish, shelf, why);
    }
    if (!why.empty()) {
      return tl::make_unexpected(std::move(why));
    }
    warn(made, wish, shelf);
    return made;
  } catch (const Turning::GivenUp&) {
    return tl::make_unexpected(Refused{"Given up before it was found."});
  }
}

scenario::Scenario plain_case(const Shelf& shelf) {
  scenario::Scenario plain;
  plain.key = "composed";
  plain.specimen = shelf.plain;
  plain.room_c = shelf.plain.temperature_c;
  plain.rules.calibration_c = 20;
  for (const auto& reagent : shelf.world->catalogue.reagents) {
    plain.reagents_out.push_back(reagent.key);
  }
  return plain;
}

} // namespace matula::author
