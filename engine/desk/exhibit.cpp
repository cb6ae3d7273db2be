#include "engine/desk/exhibit.hpp"

#include "engine/assets/world.hpp"
#include "engine/practice/store.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/scoring/explain.hpp"
#include "engine/scoring/standards.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace matula::desk {

namespace {

using practice::FloatJar;
using practice::HandedIn;
using practice::Store;
using practice::Sum;
using practice::Tube;

Question ask(const Store& store, const Tube& tube, bool with_table) {
  const auto& test = *store.standards->rules.find_test(tube.test);
  Question question;
  question.title = test.title;
  question.prompt = "Done by the book on a urine you know nothing of. What does the tube show?";
  question.words = test.words;
  if (with_table) {
    question.table = practice::table_of(store, tube.test);
  }
  return question;
}

Question ask(const FloatJar& jar) {
  Question question;
  question.kind = Posed::Float;
  question.title = "The urinometer";
  question.prompt = fmt::format(
      "The float stands still; the urine is at {:g} °C. Bring your eye level with the surface and "
      "read the scale at the bottom of the meniscus, to a whole mark.",
      jar.liquid_c);
  question.eye_mm = jar.eye_mm;
  return question;
}

std::string grams(double g_per_dl) {
  return g_per_dl > 0 ? fmt::format("{:g} g/dL", g_per_dl) : "none";
}

Question ask(const Sum& sum) {
  const auto& basis = sum.basis;
  Question question;
  question.kind = Posed::Sum;
  question.title = "Correcting a reading";
  question.prompt = "Write the gravity after each step, each from your own line before it.";
  question.given = {{"Reading in the urine", scoring::say_gravity(sum.reading)},
                    {"Reading in distilled water", scoring::say_gravity(1 + basis.zero_error)},
                    {"The urine is at", fmt::format("{:g} °C", basis.temperature_c)},
                    {"The float is made for", fmt::format("{:g} °C", basis.calibration_c)},
                    {"Protein", grams(sum.protein_g_dl)},
                    {"Glucose", grams(sum.glucose_g_dl)}};
  question.rule = fmt::format(
      "Written rule of this laboratory: 0.001 for every {:g} °C; protein {:.3f} and glucose {:.3f} for "
      "each g/dL.",
      basis.per_degrees_c, basis.protein_rule, basis.glucose_rule);
  question.lines = {"after the float's own error", "after temperature", "after protein", "after glucose",
                    "reported"};
  return question;
}

Question ask(const Store& store, const HandedIn& handed) {
  Question question;
  question.kind = Posed::Delivery;
  question.title = "At the counter";
  question.prompt = "Compare form, label and container line by line. What do you do with it, and why?";
  question.delivery = reception::show(handed.delivery, *store.book);
  question.verdicts = {
      {"accept", "Accept"}, {"qualify", "Accept, with a qualification"}, {"refuse", "Refuse"}};
  question.reasons = handed.reasons;
  return question;
}

/// An empty bench with this one vessel on it.
bench::Scene alone(bench::Scene scene, const std::string& vessel) {
  scene.vessels.erase(std::remove_if(scene.vessels.begin(), scene.vessels.end(),
                                     [&](const auto& seen) { return seen.name != vessel; }),
                      scene.vessels.end());
  scene.shelf.clear();
  scene.papers.clear();
  scene.cards.clear();
  scene.flame_on = scene.hood = false;
  scene.spilled_ml = 0;
  scene.bath_c = scene.room_c;
  for (auto& seen : scene.vessels) {
    seen.place = bench::Place::Rack;
  }
  return scene;
}

constexpr int rack_size = 6;

std::string name_at(int place) {
  return fmt::format("tube-{}", place % rack_size + 1);
}

/// The tube in its place among empty ones.
bench::Scene in_rack(const bench::Scene& all, const std::string& vessel, int place) {
  bench::Scene scene = alone(all, vessel);
  const auto empty = std::find_if(all.vessels.begin(), all.vessels.end(), [](const auto& seen) {
    return seen.name.rfind("tube-", 0) == 0 && seen.looks.level_mm <= 0;
  });
  for (auto& seen : scene.vessels) {
    seen.name = name_at(place);
  }
  for (int i = 0; empty != all.vessels.end() && i < rack_size; ++i) {
    if (i != place % rack_size) {
      scene.vessels.push_back(*empty);
      scene.vessels.back().name = name_at(i);
    }
  }
  return scene;
}

/// Grade whose tube it is, as an index.
int grade_of(const Tube& tube) {
  return static_cast<int>(tube.read.grade);
}

} // namespace

Question Exhibit::question(const Store& store, bool with_table) const {
  if (const auto* tube = std::get_if<Tube>(&item_->thing)) {
    return ask(store, *tube, with_table);
  }
  if (const auto* jar = std::get_if<FloatJar>(&item_->thing)) {
    return ask(*jar);
  }
  if (const auto* sum = std::get_if<Sum>(&item_->thing)) {
    return ask(*sum);
  }
  return ask(store, std::get<HandedIn>(item_->thing));
}

bench::Scene Exhibit::scene(const appearance::View& view, int place) const {
  if (const auto* tube = std::get_if<Tube>(&item_->thing)) {
    return in_rack(bench::make_scene(tube->state, tube->setup, view), tube->vessel, place);
  }
  if (const auto* jar = std::get_if<FloatJar>(&item_->thing)) {
    return alone(bench::make_scene(jar->state, jar->setup, view), "jar");
  }
  return {};
}

std::string Exhibit::in_hand(int place) const {
  return std::holds_alternative<Tube>(item_->thing)       ? name_at(place)
         : std::holds_alternative<FloatJar>(item_->thing) ? "jar"
                                                          : "";
}

std::vector<practice::Unknown> Exhibit::neighbours(const Store& store) const {
  std::vector<practice::Unknown> others;
  const auto* tube = std::get_if<Tube>(&item_->thing);
  if (tube == nullptr) {
    return others;
  }
  const int grades = static_cast<int>(practice::words_of(store, tube->test).size());
  for (const int grade : {grade_of(*tube) - 1, grade_of(*tube) + 1}) {
    if (grade >= 0 && grade < grades) {
      others.push_back(practice::middle_of(store, item_->unknown, static_cast<std::size_t>(grade)));
    }
  }
  return others;
}

std::vector<Beside> Exhibit::beside(const practice::Maker& maker, const appearance::View& view) const {
  const auto* own = std::get_if<Tube>(&item_->thing);
  if (own == nullptr) {
    return {};
  }
  const auto words = practice::words_of(maker.store(), own->test);
  const auto word = [&](const Tube& tube) { return words[static_cast<std::size_t>(grade_of(tube))]; };
  std::vector<Beside> row{
      {"The unknown: " + word(*own), bench::look(own->state, own->setup, own->vessel, view)}};
  for (const auto& unknown : neighbours(maker.store())) {
    const auto made = maker.ready(unknown);
    if (!made) {
      return {};
    }
    const auto& tube = std::get<Tube>(made->thing);
    Beside one{word(tube) + ", in its middle", bench::look(tube.state, tube.setup, tube.vessel, view)};
    row.insert(grade_of(tube) < grade_of(*own) ? row.begin() : row.end(), std::move(one));
  }
  return row;
}

Feedback feedback_of(const practice::Judged& judged) {
  return {judged.right, judged.credit, judged.written, judged.expected, judged.words, judged.marks};
}

} // namespace matula::desk
