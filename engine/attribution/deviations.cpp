#include "engine/attribution/deviations.hpp"

#include "engine/attribution/gaps.hpp"
#include "engine/scoring/explain.hpp"
#include "sim/matter/catalogue.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <fmt/format.h>

namespace matula::attribution {
namespace {

using scoring::say_number;
using scoring::say_time;
using Kind = Deed::Kind;

/// How far two amounts are apart: 0 the same, ln 2 twice or half.
double apart(double found, double right) {
  constexpr double next_to_nothing = 1e-6;
  return std::abs(std::log(std::max(found, next_to_nothing) / std::max(right, next_to_nothing)));
}

/// All that was put into the tube of one kind of thing.
struct Total {
  double amount = 0;
  bool gently = true; ///< All of it.
  std::vector<const Deed*> deeds;
};

Total total_of(const std::vector<Deed>& deeds, const Deed& like) {
  Total total;
  for (const auto& deed : deeds) {
    if (deed.kind == Kind::Add && deed.same_as(like)) {
      total.amount += deed.amount;
      total.gently = total.gently && deed.gently;
      total.deeds.push_back(&deed);
    }
  }
  return total;
}

std::vector<std::size_t> steps_of(const Total& total) {
  std::vector<std::size_t> steps;
  for (const auto* deed : total.deeds) {
    steps.insert(steps.end(), deed->steps.begin(), deed->steps.end());
  }
  return steps;
}

class Finder {
public:
  Finder(const Method& method, const Work& work, const Trail& trail)
      : method_(method), work_(work), trail_(trail), learner_(deeds_of(work, trail, method.test)),
        recipe_(deeds_of(method.recipe, method.test, names_for(method.recipe, work))),
        answers_(aligned(recipe_.deeds, learner_)) {}

  std::vector<Deviation> find() {
    if (learner_.empty()) {
      return {};
    }
    join_stays(learner_, answers_);
    specimen();
    volumes();
    extras();
    heating();
    mixing();
    others();
    times();
    return std::move(found_);
  }

private:
  [[nodiscard]] std::string broken(const std::vector<std::string>& facts) const {
    return broken_rule(method_.marks, method_.test.rules, facts);
  }
  /// Whether an amount is worth a look: broken rule or far from the recipe.
  [[nodiscard]] bool off(double found, double right, const std::vector<std::string>& facts) const {
    const double ratio = apart(found, right);
    return ratio > std::log(method_.why.loose_ratio) ||
           (ratio > std::log(method_.why.tight_ratio) && !broken(facts).empty());
  }

  Deviation& note(std::string key, std::string words, std::vector<std::string> facts) {
    Deviation one;
    one.key = std::move(key);
    one.words = std::move(words);
    one.rule = broken(facts);
    one.facts = std::move(facts);
    found_.push_back(std::move(one));
    return found_.back();
  }

  [[nodiscard]] std::string name_of(const Deed& deed) const {
    if (deed.what == "specimen") {
      return "urine";
    }
    const auto* reagent = method_.catalogue.find_reagent(deed.bottle);
    return reagent != nullptr ? inside_a_sentence(reagent->label) : deed.bottle;
  }

  /// "Acetic acid 10 %" is "acetic acid 10 %" there; "Benedict's reagent" and "SSA" keep their capitals.
  static std::string inside_a_sentence(std::string label) {
    static const std::array<const char*, 12> common{"Acetic",   "Acetate",        "Nitric",   "Distilled",
                                                    "Ammonia",  "Ferric",         "Barium",   "Sodium",
                                                    "Hydrogen", "Sulfosalicylic", "Tincture", "Saturated"};
    const bool lower = std::any_of(common.begin(), common.end(),
                                   [&](const char* word) { return label.rfind(word, 0) == 0; });
    if (lower) {
      label[0] = static_cast<char>(label[0] - 'A' + 'a');
    }
    return label;
  }

  static std::vector<std::string> facts_of(const Deed& deed) {
    if (deed.what == "specimen") {
      return {"urine_ml"};
    }
    return deed.what == "reagent"
               ? std::vector<std::string>{"reagent_ml", "acid_per_urine", "acid_drops", "acid_drops_if_any"}
               : std::vector<std::string>{};
  }

  // --- the specimen ---

  /// The first step that takes from the specimen's own cup for this test.
  [[nodiscard]] std::optional<std::size_t> first_taken() const {
    for (std::size_t i = 0; i < work_.steps.size(); ++i) {
      const auto& action = work_.steps[i].action;
      const auto* pour = std::get_if<bench::Pour>(&action);
      const auto* dip = std::get_if<bench::DipPaper>(&action);
      if ((pour != nullptr && pour->from == "specimen" && work_.vessels.count(pour->to) > 0) ||
          (dip != nullptr && dip->vessel == "specimen")) {
        return i;
      }
    }
    return std::nullopt;
  }

  void specimen() {
    const auto taken = first_taken();
    if (!taken) {
      return;
    }
    const double now_s = trail_.points[*taken].time_s;
    double mixed_s = -1;
    for (std::size_t i = 0; i < *taken; ++i) {
      const auto* mix = std::get_if<bench::Mix>(&work_.steps[i].action);
      mixed_s = mix != nullptr && mix->vessel == "specimen" ? trail_.points[i + 1].since_s : mixed_s;
    }
    if (mixed_s < 0 || now_s - mixed_s > method_.why.settled_s) {
      auto& one =
          note("specimen.mixed",
               mixed_s < 0 ? "the specimen was not mixed before it was taken from"
                           : "the specimen had stood " + say_time(now_s - mixed_s) + " since it was mixed",
               {"specimen_mixed", "mixed_before_dip"});
      Change change;
      change.kind = Change::Kind::Insert;
      change.at = *taken;
      change.recipe.kind = procedure::StepKind::Mix;
      change.recipe.to = "specimen";
      change.recipe.seconds = 5;
      one.changes = {change};
    }
    if (const double off_k = trail_.points[*taken].specimen_c - method_.room_c;
        std::abs(off_k) > method_.why.cold_k) {
      auto& one = note("specimen.temperature",
                       fmt::format("the specimen was used at {} °C instead of at the room's temperature",
                                   say_number(trail_.points[*taken].specimen_c)),
                       {"specimen_c_at_dip", "temperature_at_first_use_c"});
      Change change;
      change.kind = Change::Kind::RoomWarm;
      change.at = *taken;
      change.vessel = "specimen";
      one.changes = {change};
    }
    if (now_s > method_.why.stale_s) {
      auto& one =
          note("specimen.age", "the specimen stood " + say_time(now_s) + " before it was taken from", {});
      one.changes = shorten(work_, 0, *taken, now_s - method_.why.fresh_s);
    }
  }

  // --- what went in ---

  /// The recipe's things, each once.
  [[nodiscard]] std::vector<const Deed*> things() const {
    std::vector<const Deed*> all;
    for (const auto& deed : recipe_.deeds) {
      const bool known = std::any_of(all.begin(), all.end(), [&](const Deed* d) { return d->same_as(deed); });
      if (deed.kind == Kind::Add && !known) {
        all.push_back(&deed);
      }
    }
    return all;
  }

  void volumes() {
    const bool together = all_in_proportion();
    for (const Deed* thing : things()) {
      const Total right = total_of(recipe_.deeds, *thing);
      const Total found = total_of(learner_, *thing);
      if (found.deeds.empty()) {
        missing(*thing, right);
        continue;
      }
      if (!together) {
        amount(*thing, found, right);
      }
      manner_of_pouring(*thing, found, right);
      wrong_bottle(*thing, found);
      dilution(*thing, found);
    }
  }

  /// Everything half or twice as much is one thing to put right, not several that undo each other.
  bool all_in_proportion() {
    double first = 0;
    std::vector<std::size_t> steps;
    std::size_t seen = 0;
    for (const Deed* thing : things()) {
      const Total right = total_of(recipe_.deeds, *thing);
      const Total found = total_of(learner_, *thing);
      const double ratio = found.amount / right.amount;
      first = seen == 0 ? ratio : first;
      if (!(ratio > 0) || apart(ratio, first) > std::log(method_.why.tight_ratio)) {
        return false;
      }
      ++seen;
      const auto more = steps_of(found);
      steps.insert(steps.end(), more.begin(), more.end());
    }
    if (seen < 2 || !off(first, 1, {"urine_ml", "reagent_ml"})) {
      return false;
    }
    auto& one = note("volume.all",
                     fmt::format("all volumes were {} of what the method asks for",
                                 say_number(std::round(first * 100) / 100) + " times"),
                     {"urine_ml", "reagent_ml"});
    Change change;
    change.kind = Change::Kind::Scale;
    change.steps = steps;
    change.value = 1 / first;
    one.changes = {change};
    return true;
  }

  void missing(const Deed& thing, const Total& right) {
    auto& one = note("missing." + thing.what, "no " + name_of(thing) + " was added", facts_of(thing));
    for (const auto* deed : right.deeds) {
      one.changes.push_back(insertion(static_cast<std::size_t>(deed - recipe_.deeds.data())));
    }
  }

  void amount(const Deed& thing, const Total& found, const Total& right) {
    if (!off(found.amount, right.amount, facts_of(thing))) {
      return;
    }
    auto& one = note("volume." + thing.what,
                     fmt::format("{} mL of {} instead of {} mL", say_number(found.amount), name_of(thing),
                                 say_number(right.amount)),
                     facts_of(thing));
    Change change;
    change.kind = Change::Kind::Scale;
    change.steps = steps_of(found);
    change.value = right.amount / found.amount;
    one.changes = {change};
  }

  void manner_of_pouring(const Deed& thing, const Total& found, const Total& right) {
    if (!right.gently || found.gently) {
      return; // Gently poured where it need not be is mixed afterwards all the same.
    }
    auto& one = note("gently." + thing.what, "the " + name_of(thing) + " was not run gently down the wall",
                     {"poured_gently"});
    Change change;
    change.kind = Change::Kind::Gently;
    change.steps = steps_of(found);
    change.flag = true;
    one.changes = {change};
  }

  void wrong_bottle(const Deed& thing, const Total& found) {
    if (thing.what != "reagent") {
      return;
    }
    Change change;
    change.kind = Change::Kind::Bottle;
    change.vessel = thing.bottle;
    double strength = 1;
    for (const auto* deed : found.deeds) {
      if (deed->bottle != thing.bottle) {
        change.steps.insert(change.steps.end(), deed->steps.begin(), deed->steps.end());
        const auto* dispense = std::get_if<bench::Dispense>(&work_.steps[deed->steps.front()].action);
        strength = dispense != nullptr ? deed->amount / dispense->volume_ml : 1;
      }
    }
    if (change.steps.empty()) {
      return;
    }
    change.value = strength;
    const Deed* used = found.deeds.front();
    auto& one =
        note("bottle." + thing.what, fmt::format("{} instead of {}", name_of(*used), name_of(thing)), {});
    one.changes = {change};
  }

  void dilution(const Deed& thing, const Total& found) {
    Change change;
    change.kind = Change::Kind::Undiluted;
    for (const auto* deed : found.deeds) {
      if (deed->diluted) {
        change.steps.insert(change.steps.end(), deed->steps.begin(), deed->steps.end());
      }
    }
    if (thing.what == "specimen" && !change.steps.empty()) {
      note("diluted", "the specimen had been diluted with water", {"water_ml"}).changes = {change};
    }
  }

  void extras() {
    std::vector<const Deed*> seen;
    for (const auto& deed : learner_) {
      const auto same = [&](const Deed* d) { return d->same_as(deed); };
      const auto all = things();
      if (deed.kind != Kind::Add || !deed.read_vessel || std::any_of(all.begin(), all.end(), same) ||
          std::any_of(seen.begin(), seen.end(), same)) {
        continue;
      }
      seen.push_back(&deed);
      const Total found = total_of(learner_, deed);
      auto& one = note("extra." + deed.what,
                       fmt::format("{} mL of {} that does not belong in this test", say_number(found.amount),
                                   name_of(deed)),
                       {"water_ml"});
      Change change;
      change.steps = steps_of(found);
      one.changes = {change};
    }
  }

  // --- where the recipe's step would have stood ---

  [[nodiscard]] double waits_after(std::size_t r) const {
    return r + 1 < recipe_.deeds.size() ? recipe_.deeds[r + 1].waited_s : recipe_.last_wait_s;
  }

  [[nodiscard]] Change insertion(std::size_t r) const {
    Change change;
    change.kind = Change::Kind::Insert;
    change.recipe = recipe_.deeds[r].recipe;
    change.order = r;
    std::optional<std::size_t> before;
    std::optional<std::size_t> after;
    for (std::size_t i = 0; i < answers_.size(); ++i) {
      before = i < r && answers_[i] ? answers_[i] : before;
      after = i > r && answers_[i] && !after ? answers_[i] : after;
    }
    const std::size_t end = work_.steps.size();
    const std::size_t next = after ? learner_[*after].steps.front() : end;
    change.first = before && recipe_.deeds[r].waited_s <= waits_after(r);
    change.at = change.first ? std::min(learner_[*before].next_step, next) : next;
    return change;
  }

  // --- heat ---

  /// "32 s in the flame instead of 2 min"
  static std::string say_heats(const Deed& found, const Deed& right, bool by_boiling) {
    if (found.in_bath != right.in_bath) {
      return say_heat(found, false) + " instead of " + say_heat(right, by_boiling);
    }
    constexpr double same_k = 1;
    if (right.in_bath && std::abs(found.bath_c - right.bath_c) > same_k) {
      return say_heat(found, false) + " instead of " + say_heat(right, false);
    }
    return say_heat(found, by_boiling) + " instead of " + say_time(right.seconds);
  }

  static std::string say_heat(const Deed& deed, bool by_boiling) {
    if (deed.in_bath) {
      return fmt::format("{} in the bath at {} °C", say_time(deed.seconds), say_number(deed.bath_c));
    }
    return by_boiling ? say_time(deed.boiled_s) + " at the boil" : say_time(deed.seconds) + " in the flame";
  }

  void heating() {
    static const std::vector<std::string> facts{"seconds_above_90c", "seconds_above_90c_with_urine",
                                                "boiling_s",         "heated_s",
                                                "hot_after_acid_s",  "hottest_c",
                                                "in_bath_s",         "boil_over_ml"};
    std::size_t number = 0;
    for (std::size_t r = 0; r < recipe_.deeds.size(); ++r) {
      const Deed& right = recipe_.deeds[r];
      if (right.kind != Kind::Hot) {
        continue;
      }
      const std::string key = fmt::format("heat.{}", ++number);
      const bool by_boiling = right.boiled_s > 0;
      if (!answers_[r]) {
        note(key, "not heated (" + say_heat(right, by_boiling) + ")", facts).changes = {insertion(r)};
        continue;
      }
      const Deed& found = learner_[*answers_[r]];
      const bool elsewhere = found.in_bath != right.in_bath;
      const bool time_off =
          by_boiling ? off(found.boiled_s, right.boiled_s, facts) : off(found.seconds, right.seconds, facts);
      const bool bath_off = right.in_bath && std::abs(found.bath_c - right.bath_c) > method_.why.cold_k;
      if (!elsewhere && !time_off && !bath_off) {
        continue;
      }
      auto& one = note(key, say_heats(found, right, by_boiling), facts);
      Change change;
      change.kind = Change::Kind::Replace;
      change.steps = found.steps;
      change.recipe = right.recipe;
      one.changes = {change};
    }
    for (std::size_t j = 0; j < learner_.size(); ++j) {
      const Deed& deed = learner_[j];
      constexpr double a_moment_s = 5;
      if (deed.kind == Kind::Hot && !answered(j) && deed.urine_inside && deed.seconds > a_moment_s) {
        Change change;
        change.steps = deed.steps;
        note(fmt::format("heat.extra.{}", j), say_heat(deed, false) + ", which the method does not ask for",
             facts)
            .changes = {change};
      }
    }
  }

  [[nodiscard]] bool answered(std::size_t j) const {
    return std::any_of(answers_.begin(), answers_.end(), [j](const auto& answer) { return answer == j; });
  }

  // --- mixing ---

  void mixing() {
    static const std::vector<std::string> facts{"mixed_after_last_addition"};
    std::size_t number = 0;
    for (std::size_t r = 0; r < recipe_.deeds.size(); ++r) {
      const Deed& right = recipe_.deeds[r];
      if (right.kind != Kind::Mix) {
        continue;
      }
      const std::string key = fmt::format("mix.{}", ++number);
      if (!answers_[r]) {
        note(key, mixing_left_out(r), facts).changes = {insertion(r)};
        continue;
      }
      const Deed& found = learner_[*answers_[r]];
      const bool short_of = found.seconds * method_.why.mixed_ratio < right.seconds;
      if (!short_of && found.manner == right.manner) {
        continue;
      }
      const char* how = found.manner == right.manner           ? "mixed"
                        : found.manner == bench::Manner::Swirl ? "swirled"
                                                               : "turned over";
      auto& one =
          note(key,
               fmt::format("{} {} instead of {}{}", how, say_time(found.seconds),
                           found.manner == right.manner ? "" : "turned over ", say_time(right.seconds)),
               facts);
      Change change;
      change.kind = Change::Kind::Replace;
      change.steps = found.steps;
      change.recipe = right.recipe;
      one.changes = {change};
    }
    for (std::size_t j = 0; j < learner_.size(); ++j) {
      if (learner_[j].kind == Kind::Mix && learner_[j].read_vessel && !answered(j) && !mixed_there(j)) {
        Change change;
        change.steps = learner_[j].steps;
        note(fmt::format("mix.extra.{}", j), mixing_too_much(), facts).changes = {change};
      }
    }
  }

  [[nodiscard]] std::string mixing_left_out(std::size_t r) const {
    const bool anchor_follows = std::any_of(recipe_.deeds.begin() + static_cast<std::ptrdiff_t>(r),
                                            recipe_.deeds.end(), [](const Deed& d) { return d.is_anchor(); });
    constexpr double long_wait_s = 60;
    if (!anchor_follows && recipe_.deeds[r].waited_s > long_wait_s) {
      return "not turned over again before reading";
    }
    for (std::size_t i = r; i-- > 0;) {
      if (recipe_.deeds[i].kind == Kind::Add) {
        return "not mixed after the " + name_of(recipe_.deeds[i]);
      }
    }
    return "not mixed";
  }

  [[nodiscard]] std::string mixing_too_much() const {
    const bool layers =
        std::any_of(recipe_.deeds.begin(), recipe_.deeds.end(), [](const Deed& d) { return d.gently; });
    return layers ? "shaken, where one liquid must lie on the other"
                  : "mixed, where the method leaves the tube at rest";
  }

  /// Whether the recipe mixes at all at the place where the learner's deed `j` stands.
  [[nodiscard]] bool mixed_there(std::size_t j) const {
    std::size_t from = 0;
    std::size_t to = recipe_.deeds.size();
    for (std::size_t r = 0; r < recipe_.deeds.size(); ++r) {
      if (!answers_[r] || !recipe_.deeds[r].is_anchor()) {
        continue;
      }
      if (*answers_[r] < j) {
        from = r + 1;
      } else {
        to = std::min(to, r);
      }
    }
    return std::any_of(recipe_.deeds.begin() + static_cast<std::ptrdiff_t>(from),
                       recipe_.deeds.begin() + static_cast<std::ptrdiff_t>(std::max(from, to)),
                       [](const Deed& d) { return d.kind == Kind::Mix; });
  }

  // --- papers and powders ---

  void others() {
    for (std::size_t r = 0; r < recipe_.deeds.size(); ++r) {
      const Deed& right = recipe_.deeds[r];
      if (right.kind != Kind::Other || right.what == "lay" || right.what == "filter") {
        continue;
      }
      if (!answers_[r]) {
        const std::string words = right.what == "blot"   ? "the edge was not drawn over tissue"
                                  : right.what == "drop" ? "no " + name_of(right) + " was dropped on it"
                                                         : "left out: " + right.what;
        note(right.what, words, {"blotted", "drops_on_paper"}).changes = {insertion(r)};
        continue;
      }
      const Deed& found = learner_[*answers_[r]];
      const bool dip = right.what == "dip";
      if ((!dip && right.what != "drop") || !off(found.amount, right.amount, {"dip_s", "drops_on_paper"})) {
        continue;
      }
      auto& one = note(
          right.what,
          dip ? fmt::format("dipped {} instead of {}", say_time(found.amount), say_time(right.amount))
              : fmt::format("{} drops instead of {}", say_number(found.amount), say_number(right.amount)),
          {dip ? "dip_s" : "drops_on_paper"});
      Change change;
      change.kind = Change::Kind::Scale;
      change.steps = found.steps;
      change.value = right.amount / std::max(found.amount, 0.01);
      one.changes = {change};
    }
  }

  // --- time ---

  [[nodiscard]] double recipe_rest_s() const {
    double rest_s = recipe_.last_wait_s;
    for (std::size_t r = recipe_.deeds.size(); r-- > 0 && !recipe_.deeds[r].is_anchor();) {
      rest_s += recipe_.deeds[r].seconds + recipe_.deeds[r].waited_s;
    }
    return rest_s;
  }

  void times() {
    reading_time();
    const Deed* left = nullptr;
    double wait_s = 0;
    std::size_t number = 0;
    for (std::size_t r = 0; r < recipe_.deeds.size(); ++r) {
      const Deed& right = recipe_.deeds[r];
      wait_s += right.waited_s + (right.kind == Kind::Mix ? right.seconds : 0);
      if (!right.is_anchor()) {
        continue;
      }
      const Deed* here = answers_[r] ? &learner_[*answers_[r]] : nullptr;
      if (left != nullptr && here != nullptr) {
        between(*left, *here, wait_s, ++number);
      }
      left = here;
      wait_s = 0;
    }
  }

  void reading_time() {
    static const std::vector<std::string> facts{"seconds_since_last_addition", "paper_age_s", "since_drop_s"};
    const Deed* last = nullptr;
    for (const auto& deed : learner_) {
      last = deed.is_anchor() && deed.read_vessel && deed.what != "blot" ? &deed : last;
    }
    if (last == nullptr) {
      return;
    }
    const double found_s = trail_.points.back().time_s - last->end_s;
    const double right_s = recipe_rest_s();
    constexpr double a_moment_s = 10;
    if (std::abs(found_s - right_s) < a_moment_s || !off(found_s, right_s, facts)) {
      return;
    }
    const auto words = fmt::format("read after {} instead of {}", say_time(found_s), say_time(right_s));
    note("time", words, facts).changes =
        stretch(work_, last->next_step, work_.steps.size(), right_s - found_s);
  }

  void between(const Deed& left, const Deed& right, double wait_s, std::size_t number) {
    const double found_s = right.begin_s - left.end_s;
    const bool hurried = found_s * 2 < wait_s && wait_s >= method_.why.short_wait_s;
    const bool left_alone = found_s > wait_s * 2 + method_.why.long_wait_s;
    if ((hurried || left_alone) && left.next_step <= right.steps.front()) {
      note(fmt::format("wait.{}", number),
           hurried ? fmt::format("only {} between two steps instead of {}", say_time(std::max(0.0, found_s)),
                                 say_time(wait_s))
                   : fmt::format("left standing {} between two steps", say_time(found_s)),
           {"stood_before_filter_s"})
          .changes = stretch(work_, left.next_step, right.steps.front(), wait_s - found_s);
    }
  }

  const Method& method_;
  const Work& work_;
  const Trail& trail_;
  std::vector<Deed> learner_;
  RecipeDeeds recipe_;
  std::vector<std::optional<std::size_t>> answers_;
  std::vector<Deviation> found_;
};

} // namespace

std::string broken_rule(const std::vector<scoring::Mark>& marks, const std::vector<scoring::Rule>& rules,
                        const std::vector<std::string>& facts) {
  for (const auto& rule : rules) {
    const bool about = std::find(facts.begin(), facts.end(), rule.fact) != facts.end();
    const bool lost = about && std::any_of(marks.begin(), marks.end(), [&](const scoring::Mark& mark) {
                        return mark.item == "process." + rule.key;
                      });
    if (lost) {
      return rule.key;
    }
  }
  return "";
}

std::vector<Deviation> deviations_of(const Method& method, const Work& work, const Trail& trail) {
  return Finder(method, work, trail).find();
}

} // namespace matula::attribution
