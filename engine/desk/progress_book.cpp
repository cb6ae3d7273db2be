#include "engine/desk/progress_book.hpp"

#include "engine/desk/make_page.hpp"
#include "engine/desk/remember.hpp"
#include "engine/desk/wall_clock.hpp"
#include "engine/learner/record.hpp"
#include "engine/practice/rules.hpp"
#include "engine/practice/store.hpp"
#include "engine/practice/tube.hpp"
#include "sim/bench/scene.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace matula::desk {

struct ProgressBook::Impl {
  std::shared_ptr<const practice::Store> store;
  std::filesystem::path folder;
};

ProgressBook::ProgressBook(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
ProgressBook::~ProgressBook() = default;
ProgressBook::ProgressBook(ProgressBook&&) noexcept = default;
ProgressBook& ProgressBook::operator=(ProgressBook&&) noexcept = default;

tl::expected<ProgressBook, scenario::Problems> ProgressBook::load(const Ground& ground,
                                                                  const std::filesystem::path& learner) {
  auto store = practice::load_store(ground.world(), ground.standards(), ground.assets_folder());
  if (!store) {
    return tl::make_unexpected(store.error());
  }
  return ProgressBook(std::make_unique<Impl>(Impl{*store, learner}));
}

ProgressPage ProgressBook::page() const {
  const auto record = learner::load(record_file(impl_->folder));
  auto page = make_page(*impl_->store, record.answers, now_s());
  if (!record.problems.empty()) {
    page.trouble = "Lines of your record that cannot be read are left out; they stay in the file. " +
                   scenario::to_text(record.problems);
  }
  return page;
}

namespace {

/// The word of a tube by the reference's lines or by the learner's.
std::string word_at(const OwnLines& group, double ShownLine::*of, double intensity) {
  const auto grade = static_cast<std::size_t>(std::count_if(
      group.lines.begin(), group.lines.end(), [&](const ShownLine& line) { return intensity > line.*of; }));
  return grade < group.words.size() ? group.words[grade] : "";
}

} // namespace

std::vector<Beside> ProgressBook::disputed_tubes(const OwnLines& group, const appearance::View& view) const {
  std::vector<Beside> tubes;
  if (!group.disputed || group.test.empty()) {
    return tubes;
  }
  const ShownLine& line = group.lines[*group.disputed];
  const auto [from, to] = std::minmax(line.reference, line.own);
  constexpr std::array<double, 3> shares{0.1, 0.5, 0.9};
  for (const double share : shares) {
    practice::Unknown unknown;
    unknown.what = group.test;
    unknown.trap = "plain";
    unknown.target = from + share * (to - from);
    unknown.seed = 1;
    const auto tube = practice::make_tube(*impl_->store, unknown);
    const double intensity = tube.read.intensity;
    tubes.push_back(
        {fmt::format("A practised reader: {}. You: {}.", word_at(group, &ShownLine::reference, intensity),
                     word_at(group, &ShownLine::own, intensity)),
         bench::look(tube.state, tube.setup, tube.vessel, view)});
  }
  return tubes;
}

} // namespace matula::desk
