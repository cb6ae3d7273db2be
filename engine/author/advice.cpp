#include "engine/author/advice.hpp"

#include "engine/assets/world.hpp"
#include "engine/author/recipe_here.hpp"
#include "engine/author/wish.hpp"
#include "engine/author/worth.hpp"
#include "engine/scoring/ladder.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::author {

namespace {

using scenario::Scenario;

bool has(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

bool asks(const Scenario& scenario, const std::string& test) {
  return (test == "look" && scenario.asked.look) ||
         (test == "specific_gravity" && scenario.asked.specific_gravity) || scenario.asked.has(test);
}

/// The marking rule of a test as this case has it.
scoring::OrdinalRule ordinal_of(const Shelf& shelf, const Scenario& scenario, const std::string& test) {
  return shelf.standards->rules.with(scenario.marking.rules).find_test(test)->ordinal;
}

class Adviser {
public:
  Adviser(const Shelf& shelf, const Scenario& scenario, const Preview& previewed,
          const std::optional<scenario::Review>& review)
      : shelf_(shelf), scenario_(scenario), previewed_(previewed), review_(review) {}

  std::vector<Advice> all() {
    unanswerable();
    traps();
    const auto weights = advise_on_weights(scenario_);
    advice_.insert(advice_.end(), weights.begin(), weights.end());
    words();
    for (const auto& shown : previewed_.shown()) {
      on_a_line(shown);
      not_shown(shown);
    }
    for (const auto& words : previewed_.warnings()) {
      say("physiology", words);
    }
    review();
    return std::move(advice_);
  }

private:
  void say(const char* kind, std::string words) { advice_.push_back({kind, std::move(words)}); }

  void unanswerable() {
    for (const auto& key : scenario_.asked.procedures) {
      const auto& test = *shelf_.standards->rules.find_test(key);
      const auto recipe = recipe_here(test, shelf_.standards->recipes.at(key), scenario_.reagents_out,
                                      shelf_.world->catalogue);
      for (const auto& bottle : bottles_of(recipe)) {
        if (!has(scenario_.reagents_out, bottle)) {
          say("unanswerable",
              fmt::format("{} is asked for, and '{}' is not out: nobody can finish it. Put the bottle "
                          "into [bench] reagents, or ask for something else.",
                          test.title, bottle));
        }
      }
    }
    if (scenario_.asked.specific_gravity && !previewed_.liquid().float_reads) {
      say("unanswerable",
          fmt::format("The specific gravity is asked for, and {:g} mL do not fill the jar for the float.",
                      scenario_.specimen.volume_ml));
    }
  }

  [[nodiscard]] bool settles(const std::string& by) const {
    const std::string asked_for = "test:";
    if (by == "decision") {
      return !scenario_.decisions.empty();
    }
    if (by.rfind(asked_for, 0) == 0) {
      return scenario_.asked.has(by.substr(asked_for.size()));
    }
    const auto& out = scenario_.reagents_out;
    return std::any_of(out.begin(), out.end(), [&](const auto& bottle) { return bottle.rfind(by, 0) == 0; });
  }

  void traps() {
    for (const auto& trap : shelf_.traps) {
      const bool misleads = std::any_of(trap.tests.begin(), trap.tests.end(),
                                        [&](const auto& test) { return asks(scenario_, test); });
      const auto& by = trap.settled_by;
      const bool settled =
          by.empty() || std::any_of(by.begin(), by.end(), [&](const auto& one) { return settles(one); });
      if (misleads && !settled && is_there(trap, scenario_, shelf_)) {
        say("trap",
            fmt::format("There is {} here, and nothing out or asked for tells it from the real thing. {}",
                        trap.label, trap.how));
      }
    }
  }

  /// Words a draft begins with, which somebody was to replace.
  void words() {
    const auto draft = [](const std::string& text) { return text.rfind("Write here ", 0) == 0; };
    if (draft(scenario_.debrief)) {
      say("words", "debrief still says what a draft begins with: students read it after the marks.");
    }
    for (const auto& decision : scenario_.decisions) {
      if (draft(decision.why)) {
        say("words",
            fmt::format("why of the question '{}' still says what a draft begins with.", decision.key));
      }
    }
  }

  void on_a_line(const Shown& shown) {
    constexpr double near = 0.05; // Grades.
    if (!shown.intensity || !shown.from_line || *shown.from_line > near) {
      return;
    }
    const auto rule = ordinal_of(shelf_, scenario_, shown.test);
    const auto grade = shelf_.standards->rules.find_test(shown.test)->grade(shown.word);
    if (grade && !scoring::score_intensity(*shown.intensity, *grade, rule).borderline) {
      say("line",
          fmt::format(
              "{} reads {} only {:.2f} grades from the next word, and [marking] lets one word alone be "
              "right. Move the dose, or leave reader_spread as it is usually.",
              shown.title, shown.word, *shown.from_line));
    }
  }

  [[nodiscard]] bool misled(const std::string& test) const {
    return std::any_of(shelf_.traps.begin(), shelf_.traps.end(), [&](const Trap& trap) {
      return has(trap.tests, test) && is_there(trap, scenario_, shelf_);
    });
  }

  /// What a plain urine with as much of the substance shows.
  [[nodiscard]] std::optional<scoring::LadderRung> on_plain(const Shown& shown, const Place& analyte) const {
    const auto& test = *shelf_.standards->rules.find_test(shown.test);
    const auto& recipe = shelf_.standards->recipes.at(shown.test);
    const double amount = amount_of(scenario_.specimen, analyte, *shelf_.limits, shelf_.world->catalogue);
    if (!(amount > 0) || analyte.key != recipe.ladder_species) {
      return std::nullopt;
    }
    const double per = from_mg_per_dl(1, analyte.key, *shelf_.limits, shelf_.world->catalogue);
    return scoring::climb(*shelf_.world, shelf_.plain, recipe, test.scale, amount / per);
  }

  /// Something is listed that a plain urine would show, and here nothing is seen of it.
  void not_shown(const Shown& shown) {
    const auto& rules = shelf_.standards->rules;
    const auto& test = *rules.find_test(shown.test);
    const auto analyte = analyte_of(shown.test, {}, shelf_);
    if (!shown.intensity || shown.word != test.words.front() || !analyte || misled(shown.test)) {
      return;
    }
    const auto plain = on_plain(shown, *analyte);
    if (plain && static_cast<std::size_t>(plain->read.grade) >= test.reportable) {
      say("finding",
          fmt::format(
              "{} is listed, and {} reads {}: a plain urine with as much reads {}. Something here hides it.",
              say_amount(*analyte,
                         amount_of(scenario_.specimen, *analyte, *shelf_.limits, shelf_.world->catalogue),
                         *shelf_.limits),
              test.title, shown.word, test.word(plain->read.grade)));
    }
  }

  void review() {
    if (!review_) {
      return;
    }
    const auto& review = *review_;
    if (review.reviewer.empty() || review.reviewer == review.author) {
      say("review", "No colleague has looked at it yet: [review] reviewer is the author's own or missing.");
    }
    if (!review.changes.empty() && review.changes.back().version != review.version) {
      say("review", fmt::format("[review] version is {}, and the last entry of the changelog is for {}.",
                                review.version, review.changes.back().version));
    }
  }

  const Shelf& shelf_;
  const Scenario& scenario_;
  const Preview& previewed_;
  const std::optional<scenario::Review>& review_;
  std::vector<Advice> advice_;
};

double value_of(const Trap::Sign& sign, const Scenario& scenario, const Shelf& shelf) {
  if (sign.of == "ph") {
    return scenario.specimen.target_ph;
  }
  if (sign.of == "temperature") {
    return scenario.specimen.life.empty() ? scenario.specimen.temperature_c
                                          : scenario.specimen.life.back().temperature_c;
  }
  if (sign.of == "stood") {
    return scenario.specimen.stood_hours;
  }
  if (sign.of == "yellow") {
    return scenario.specimen.urochrome_a420;
  }
  return sign.of == "zero_error"
             ? scenario.urinometer_zero_error
             : amount_of(scenario.specimen, sign.place, *shelf.limits, shelf.world->catalogue);
}

} // namespace

bool is_there(const Trap& trap, const Scenario& scenario, const Shelf& shelf) {
  return !trap.signs.empty() &&
         std::all_of(trap.signs.begin(), trap.signs.end(), [&](const Trap::Sign& sign) {
           const double value = value_of(sign, scenario, shelf);
           return value >= sign.low.value_or(value) && value <= sign.high.value_or(value);
         });
}

std::vector<Advice> advise(const Shelf& shelf, const Scenario& scenario, const Preview& previewed,
                           const std::optional<scenario::Review>& review) {
  return Adviser(shelf, scenario, previewed, review).all();
}

} // namespace matula::author
