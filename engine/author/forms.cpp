#include "engine/author/forms.hpp"

#include "engine/assets/world.hpp"
#include "engine/author/recipe_here.hpp"
#include "engine/author/save.hpp"
#include "engine/practice/difficulty.hpp"
#include "engine/practice/draws.hpp"
#include "engine/scenario/quantity.hpp"
#include "engine/scoring/numeric.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <mutex>
#include <set>
#include <thread>

namespace matula::author {

namespace {

using practice::Draws;
using scenario::Scenario;

constexpr int most_attempts = 6;

const Trap* find_trap(const Shelf& shelf, const std::string& key) {
  const auto at =
      std::find_if(shelf.traps.begin(), shelf.traps.end(), [&](const Trap& one) { return one.key == key; });
  return at == shelf.traps.end() ? nullptr : &*at;
}

/// Puts what a trap is made of into the case that is begun from.
void plant(const Trap& trap, const Shelf& shelf, Scenario& base) {
  for (const auto& [key, value] : trap.set) {
    const double number = scoring::number_from_text(value).value_or(0);
    if (key == "ph") {
      base.specimen.target_ph = number;
    } else if (key == "yellow") {
      base.specimen.urochrome_a420 = number;
    } else if (key == "temperature") {
      base.specimen.temperature_c = number;
    } else if (key == "zero_error") {
      base.urinometer_zero_error = number;
    } else {
      set_amount(base.specimen, {"dissolved", key}, number, *shelf.limits, shelf.world->catalogue);
    }
  }
}

/// Makes one row of a plan for one student after another.
class RowMaker {
public:
  RowMaker(const FormGround& ground, const Plan& plan, std::size_t row, std::uint64_t seed,
           const scoring::GiveUp& give_up)
      : ground_(ground), shelf_(*ground.shelf), plan_(plan), row_(plan.rows[row]), number_(row + 1),
        seed_(seed), give_up_(give_up), trap_(find_trap(shelf_, row_.trap)) {
    std::set<std::string> substances;
    for (const auto& test : shelf_.standards->rules.tests) {
      if (row_.words.count(test.key) == 0) {
        continue;
      }
      const auto analyte = analyte_of(test.key, want_of(test.key), shelf_);
      if (substances.insert(analyte ? analyte->key : test.key).second) {
        counting_.push_back(test.key);
      }
    }
  }

  /// `reference`: difficulty it must come to; nothing for the first student's.
  tl::expected<FormUnknown, Refused> make(const std::string& student, std::optional<double> reference) const {
    Refused why;
    for (int attempt = 0; attempt < most_attempts; ++attempt) {
      const Draws draws = Draws(Draws(seed_).seed(fmt::format("{}/{}/{}", student, number_, attempt)));
      const auto base = base_of(draws);
      const auto made = compose(shelf_, base, wish_of(draws), give_up_);
      if (!made) {
        why = made.error();
        continue;
      }
      const double difficulty = difficulty_of(*made);
      const double aim = reference.value_or(difficulty);
      if (std::abs(difficulty - aim) <= plan_.tolerance / 2) {
        return finish(base, *made, draws, difficulty);
      }
      why = {fmt::format("it came out at {:+.2f} logits where {:+.2f} was wanted", difficulty, aim)};
    }
    why.insert(why.begin(), fmt::format("Unknown {} ({}, {}) for {} cannot be had:", number_, words(),
                                        row_.trap, student));
    return tl::make_unexpected(std::move(why));
  }

private:
  Want want_of(const std::string& test) const {
    Want want;
    const auto& rule = *shelf_.standards->rules.find_test(test);
    want.grade = static_cast<std::size_t>(rule.grade(row_.words.at(test)).value());
    if (trap_ != nullptr && trap_->by.count(test) > 0) {
      want.by = Place{"dissolved", trap_->by.at(test)};
    }
    return want;
  }

  Wish wish_of(const Draws& draws) const {
    Wish wish;
    for (const auto& [test, word] : row_.words) {
      Want want = want_of(test);
      const std::size_t last = shelf_.standards->rules.find_test(test)->words.size() - 1;
      const bool counts = std::find(counting_.begin(), counting_.end(), test) != counting_.end();
      if (counts && want.grade > 0 && analyte_of(test, want, shelf_)) {
        const bool above = want.grade == last || draws.even("side of " + test) < 0.5;
        // On the far side of the line below, or on the near side of the line above.
        const double line = static_cast<double>(want.grade) + (above ? -0.5 : 0.5);
        want.target = line + (above ? row_.from_line : -row_.from_line);
      }
      wish.tests[test] = want;
    }
    constexpr double step = 1000; // As a float is read.
    wish.gravity = std::round(draws.between("gravity", row_.gravity[0], row_.gravity[1]) * step) / step;
    const bool own_ph = trap_ != nullptr && trap_->set.count("ph") > 0;
    if (!own_ph) {
      constexpr double tenth = 10;
      wish.ph = std::round(draws.between("ph", row_.ph[0], row_.ph[1]) * tenth) / tenth;
    }
    return wish;
  }

  Scenario base_of(const Draws& draws) const {
    Scenario base = plain_case(shelf_);
    // No two people pass the same salts in the same proportions.
    for (const auto& key : shelf_.compose.scaled) {
      const Place place{"dissolved", key};
      const double amount = amount_of(base.specimen, place, *shelf_.limits, shelf_.world->catalogue);
      set_amount(base.specimen, place, amount * draws.between("own " + key, 0.85, 1.18), *shelf_.limits,
                 shelf_.world->catalogue);
    }
    base.specimen.urochrome_a420 *= draws.between("own yellow", 0.85, 1.18);
    if (trap_ != nullptr) {
      plant(*trap_, shelf_, base);
    }
    return base;
  }

  /// Mean over the tests that count.
  double difficulty_of(const Composition& made) const {
    double sum = 0;
    for (const auto& shown : made.shown) {
      if (std::find(counting_.begin(), counting_.end(), shown.test) != counting_.end()) {
        const auto& rule = shelf_.standards->rules.find_test(shown.test)->ordinal;
        const double distance =
            practice::distance_to_line(shown.intensity.value_or(0), rule, ground_.rules->choice.right_from);
        sum += practice::difficulty_at(distance, ground_.rules->difficulty);
      }
    }
    return sum / static_cast<double>(counting_.size());
  }

  std::string words() const {
    std::string all;
    for (const auto& [test, word] : row_.words) {
      all += (all.empty() ? "" : ", ") + test + " " + word;
    }
    return all;
  }

  FormUnknown finish(Scenario scenario, const Composition& made, const Draws& draws,
                     double difficulty) const {
    FormUnknown unknown;
    unknown.key = fmt::format("unknown-{}", number_);
    unknown.number =
        fmt::format("SB {:02} {:03}", draws.pick("number of the hundred", 100), draws.pick("number", 1000));
    unknown.shown = made.shown;
    unknown.difficulty = difficulty;
    unknown.gravity = made.liquid.gravity;
    scenario.key = unknown.key;
    scenario.specimen = made.specimen;
    scenario.title = fmt::format("{}, unknown {}", plan_.title, number_);
    scenario.level = "exam";
    scenario.seed = draws.seed("scenario");
    scenario.story = "Saint Brannoc's Teaching Hospital. Specimen " + unknown.number + ".";
    scenario.debrief = debrief(made);
    scenario.patient = person(draws);
    lay_out(scenario);
    unknown.text = write_case(scenario, "# Made by `matula forms " + plan_.key + "`.\n", shelf_);
    unknown.scenario = std::move(scenario);
    return unknown;
  }

  std::string debrief(const Composition& made) const {
    std::string all = "By the book:";
    for (const auto& shown : made.shown) {
      all += fmt::format(" {} {};", shown.title, shown.word);
    }
    all += fmt::format(" specific gravity {:.3f}.", made.liquid.gravity);
    return trap_ == nullptr ? all : all + " There is " + trap_->label + ": " + trap_->how;
  }

  scenario::Patient person(const Draws& draws) const {
    const auto& people = *ground_.people;
    const bool female = draws.even("sex") < 0.5;
    const auto& given = female ? people.female : people.male;
    constexpr std::size_t ages = 60;
    constexpr std::size_t youngest = 18;
    return {given[draws.pick("given name", given.size())] + " " +
                people.surnames[draws.pick("surname", people.surnames.size())] + " (invented)",
            fmt::format("{}, {}", youngest + draws.pick("age", ages), female ? "female" : "male"),
            "Outpatients", "Routine examination of the urine, please.",
            "Mid-stream, clean cup, passed 20 minutes ago"};
  }

  /// What is asked, and the bottles for it: the same for everybody.
  void lay_out(Scenario& scenario) const {
    scenario.asked = {};
    scenario.asked.look = row_.look;
    scenario.asked.specific_gravity = row_.specific_gravity;
    scenario.reagents_out = {"water"};
    for (const auto& test : shelf_.standards->rules.tests) {
      if (row_.words.count(test.key) > 0) {
        scenario.asked.procedures.push_back(test.key);
        (void)put_out(shelf_.standards->recipes.at(test.key), test.curve, scenario.reagents_out);
      }
    }
    const auto& bottles = shelf_.world->catalogue;
    for (const auto& by : trap_ == nullptr ? std::vector<std::string>{} : trap_->settled_by) {
      const auto& out = scenario.reagents_out;
      if (bottles.find_reagent(by) != nullptr && std::find(out.begin(), out.end(), by) == out.end()) {
        scenario.reagents_out.push_back(by);
      }
    }
  }

  const FormGround& ground_;
  const Shelf& shelf_;
  const Plan& plan_;
  const PlanRow& row_;
  std::size_t number_;
  std::uint64_t seed_;
  const scoring::GiveUp& give_up_;
  const Trap* trap_;
  std::vector<std::string> counting_; ///< Tests that count for the difficulty.
};

/// Works through all students' unknowns on two threads; results stand in their places.
class Work {
public:
  Work(const FormGround& ground, const Plan& plan, const std::vector<std::string>& students,
       std::uint64_t seed, const FormProgress& progress, const scoring::GiveUp& give_up)
      : plan_(plan), students_(students), progress_(progress) {
    for (std::size_t row = 0; row < plan.rows.size(); ++row) {
      makers_.emplace_back(ground, plan, row, seed, give_up);
    }
    made_.resize(students.size() * plan.rows.size());
    references_.resize(plan.rows.size());
  }

  tl::expected<std::vector<Form>, Refused> all() {
    run(0, plan_.rows.size()); // The first student's are what the others are held to.
    for (std::size_t row = 0; row < plan_.rows.size() && why_.empty(); ++row) {
      references_[row] = made_[row].difficulty;
    }
    run(plan_.rows.size(), made_.size());
    if (!why_.empty()) {
      return tl::make_unexpected(why_);
    }
    return together();
  }

private:
  void run(std::size_t from, std::size_t to) {
    std::atomic<std::size_t> next{from};
    const auto work = [&] {
      for (std::size_t i = next++; i < to && !failed_; i = next++) {
        one(i);
      }
    };
    std::thread other(work);
    work();
    other.join();
  }

  void one(std::size_t place) {
    const std::size_t row = place % plan_.rows.size();
    auto made = makers_[row].make(students_[place / plan_.rows.size()], references_[row]);
    const std::scoped_lock lock(mutex_);
    if (!made) {
      failed_ = true;
      why_.insert(why_.end(), made.error().begin(), made.error().end());
      return;
    }
    made_[place] = std::move(*made);
    if (progress_) {
      progress_(++done_, made_.size());
    }
  }

  tl::expected<std::vector<Form>, Refused> together() {
    std::vector<Form> forms;
    std::set<std::string> specimens;
    for (std::size_t student = 0; student < students_.size(); ++student) {
      Form form;
      form.student = students_[student];
      for (std::size_t row = 0; row < plan_.rows.size(); ++row) {
        form.unknowns.push_back(std::move(made_[student * plan_.rows.size() + row]));
        form.difficulty += form.unknowns.back().difficulty / static_cast<double>(plan_.rows.size());
        const auto& text = form.unknowns.back().text;
        if (!specimens.insert(text.substr(text.find("[specimen]"))).second) {
          return tl::make_unexpected(Refused{"Two unknowns came out with one specimen; take another seed."});
        }
      }
      forms.push_back(std::move(form));
    }
    return forms;
  }

  const Plan& plan_;
  const std::vector<std::string>& students_;
  const FormProgress& progress_;
  std::vector<RowMaker> makers_;
  std::vector<FormUnknown> made_;
  std::vector<std::optional<double>> references_;
  std::mutex mutex_;
  std::atomic<bool> failed_{false};
  Refused why_;
  std::size_t done_ = 0;
};

} // namespace

tl::expected<std::vector<Form>, Refused> make_forms(const FormGround& ground, const Plan& plan,
                                                    const std::vector<std::string>& students,
                                                    std::uint64_t seed, const FormProgress& progress,
                                                    const scoring::GiveUp& give_up) {
  if (std::set<std::string>(students.begin(), students.end()).size() != students.size()) {
    return tl::make_unexpected(Refused{"Two students have the same name or number."});
  }
  return Work(ground, plan, students, seed, progress, give_up).all();
}

} // namespace matula::author
