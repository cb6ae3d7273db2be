#include "engine/desk/control_book.hpp"

#include "engine/assets/world.hpp"
#include "engine/quality/exercise.hpp"

#include <map>

namespace matula::desk {

struct ControlBook::Impl {
  const assets::World* world = nullptr;
  std::vector<quality::Control> controls;
  std::vector<quality::Exercise> exercises;
  std::map<std::size_t, quality::Series> series;
  std::map<std::size_t, ControlChart> charts;

  const quality::Series& series_of(std::size_t exercise) {
    const auto known = series.find(exercise);
    if (known != series.end()) {
      return known->second;
    }
    const quality::Exercise& one = exercises.at(exercise);
    return series[exercise] = quality::make_series(one, quality::bench_reads(one, controls, *world));
  }
};

ControlBook::ControlBook(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
ControlBook::~ControlBook() = default;
ControlBook::ControlBook(ControlBook&&) noexcept = default;
ControlBook& ControlBook::operator=(ControlBook&&) noexcept = default;

tl::expected<ControlBook, scenario::Problems> ControlBook::load(const Ground& ground) {
  auto impl = std::make_unique<Impl>();
  impl->world = &ground.world();
  auto controls = quality::load_controls(ground.assets_folder(), ground.world().catalogue);
  if (!controls) {
    return tl::make_unexpected(controls.error());
  }
  impl->controls = std::move(*controls);
  auto exercises = quality::load_exercises(ground.assets_folder(), impl->controls, ground.world().catalogue);
  if (!exercises) {
    return tl::make_unexpected(exercises.error());
  }
  impl->exercises = std::move(*exercises);
  return ControlBook(std::move(impl));
}

std::vector<std::string> ControlBook::titles() const {
  std::vector<std::string> titles;
  for (const quality::Exercise& exercise : impl_->exercises) {
    titles.push_back(exercise.title);
  }
  return titles;
}

std::vector<std::string> ControlBook::rules() const {
  std::vector<std::string> words;
  for (const quality::Rule rule : quality::all_rules) {
    words.push_back(quality::to_word(rule) + ": " + quality::meaning(rule));
  }
  return words;
}

const ControlChart& ControlBook::chart(std::size_t exercise) {
  const auto known = impl_->charts.find(exercise);
  if (known != impl_->charts.end()) {
    return known->second;
  }
  const quality::Exercise& one = impl_->exercises.at(exercise);
  const quality::Series& series = impl_->series_of(exercise);
  ControlChart chart{one.title, one.story, {}, {}, {}, {}, {}};
  for (const std::string& key : one.controls) {
    chart.controls.push_back(quality::find_control(impl_->controls, key)->label);
  }
  for (const quality::Baseline& baseline : series.baselines) {
    chart.means.push_back(baseline.mean);
    chart.deviations.push_back(baseline.deviation);
  }
  for (const quality::Day& day : series.days) {
    chart.readings.push_back(day.readings);
    chart.z.push_back(day.z);
  }
  return impl_->charts[exercise] = std::move(chart);
}

ControlVerdict ControlBook::judge(std::size_t exercise, int day, std::size_t rule) {
  const quality::Judged judged = quality::judge(impl_->exercises.at(exercise), impl_->series_of(exercise),
                                                {day, quality::all_rules.at(rule)});
  return {judged.day_right, judged.rule_right, judged.words};
}

} // namespace matula::desk
