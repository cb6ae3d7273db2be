#include "engine/desk/practice_impl.hpp"
#include "engine/practice/quiz_log.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace matula::desk {

namespace {
constexpr double note_every_s = 15; // So much of the time spent is lost at most when the program is killed.
constexpr double minute_s = 60;
} // namespace

struct QuizRun::Impl {
  Impl(std::shared_ptr<PracticeRoom::Impl> the_room, practice::QuizLog the_log)
      : room(std::move(the_room)), log(std::move(the_log)), elapsed_s(log.state().elapsed_s),
        noted_s(elapsed_s) {}

  std::shared_ptr<PracticeRoom::Impl> room;
  practice::QuizLog log;
  double elapsed_s = 0;
  double noted_s = 0;
  int place = 0;
  bool ended = false;
  bool marked = false;
  std::string trouble;            ///< What could not be written down as it was marked.
  std::optional<Exhibit> exhibit; ///< Of the place.
  Question question;
  std::vector<Feedback> feedback;
  scoring::Report report;

  [[nodiscard]] const std::vector<practice::Unknown>& unknowns() const { return log.state().quiz.unknowns; }
  [[nodiscard]] int count() const { return static_cast<int>(unknowns().size()); }
  [[nodiscard]] bool is_open(int at) const {
    return at >= 0 && at < count() && !log.state().replies[static_cast<std::size_t>(at)];
  }

  void show(int at) {
    place = at;
    exhibit.reset();
    // What is looked at first, then the others in their order.
    std::vector<practice::Unknown> wanted{unknowns()[static_cast<std::size_t>(at)]};
    for (int i = 0; i < count(); ++i) {
      if (i != at && (is_open(i) || ended)) {
        wanted.push_back(unknowns()[static_cast<std::size_t>(i)]);
      }
    }
    room->maker->want(wanted);
  }

  bool made() {
    if (!exhibit) {
      if (auto item = room->maker->ready(unknowns()[static_cast<std::size_t>(place)])) {
        exhibit.emplace(std::move(item));
        question = exhibit->question(*room->store, marked);
        if (marked) {
          room->maker->want(exhibit->neighbours(*room->store));
        }
      }
    }
    return exhibit.has_value();
  }

  /// Marks everything once all is made; the problem in words, or empty.
  std::string mark() {
    std::vector<std::shared_ptr<const practice::Item>> items;
    for (const auto& unknown : unknowns()) {
      items.push_back(room->maker->ready(unknown));
      if (!items.back()) {
        return "";
      }
    }
    std::vector<learner::Answer> kept;
    for (std::size_t i = 0; i < items.size(); ++i) {
      const auto& reply = log.state().replies[i];
      const auto judged = practice::judge(*room->store, *items[i], reply.value_or(practice::Reply{}));
      feedback.push_back(feedback_of(judged));
      report.safety_stop = report.safety_stop || judged.safety_stop;
      for (auto mark : judged.marks) {
        mark.label = fmt::format("{}. {}", i + 1, mark.label);
        report.marks.push_back(std::move(mark));
      }
      if (reply) {
        kept.push_back(practice::answer_of(*room->store, *items[i], judged, learner::From::Quiz, now_s()));
      }
    }
    marked = true;
    std::string problem = log.finish(elapsed_s);
    if (problem.empty() && !kept.empty()) {
      problem = room->keep(kept);
    }
    show(0);
    return problem;
  }
};

QuizRun::QuizRun(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
QuizRun::~QuizRun() = default;
QuizRun::QuizRun(QuizRun&&) noexcept = default;
QuizRun& QuizRun::operator=(QuizRun&&) noexcept = default;

tl::expected<QuizRun, scenario::Problems>
QuizRun::begin(const PracticeRoom& room, const std::filesystem::path& blueprint_file, bool timed) {
  const auto& inside = *room.impl_;
  auto blueprint = practice::read_blueprint(blueprint_file, inside.store->rules, inside.ground->standards());
  if (!blueprint) {
    return tl::make_unexpected(blueprint.error());
  }
  blueprint->minutes = timed ? blueprint->minutes : 0;
  // Every repeat has a seed of its own, and no two learners the same.
  const auto seed =
      static_cast<std::uint64_t>(now_s()) * 1000 + practice::quiz_files(inside.quiz_folder()).size();
  auto log =
      practice::QuizLog::begin(inside.quiz_folder(), practice::make_quiz(*inside.store, *blueprint, seed));
  if (!log) {
    return tl::make_unexpected(log.error());
  }
  QuizRun run(std::make_unique<Impl>(room.impl_, std::move(*log)));
  run.impl_->show(0);
  return run;
}

tl::expected<QuizRun, scenario::Problems> QuizRun::resume(const PracticeRoom& room,
                                                          const std::filesystem::path& file) {
  auto log = practice::QuizLog::resume(file);
  if (!log) {
    return tl::make_unexpected(log.error());
  }
  QuizRun run(std::make_unique<Impl>(room.impl_, std::move(*log)));
  run.impl_->place = run.count() - 1;
  run.go_on();
  return run;
}

const std::string& QuizRun::title() const {
  return impl_->log.state().quiz.title;
}

int QuizRun::count() const {
  return impl_->count();
}

int QuizRun::answered() const {
  const auto& replies = impl_->log.state().replies;
  return static_cast<int>(
      std::count_if(replies.begin(), replies.end(), [](const auto& reply) { return reply.has_value(); }));
}

int QuizRun::place() const {
  return impl_->place;
}

bool QuizRun::is_open(int place) const {
  return impl_->is_open(place);
}

void QuizRun::go_to(int place) {
  if (place != impl_->place && place >= 0 && place < count() && (impl_->marked || impl_->is_open(place))) {
    impl_->show(place);
  }
}

void QuizRun::go_on() {
  for (int i = 1; i <= count(); ++i) {
    const int at = (impl_->place + i) % count();
    if (impl_->is_open(at)) {
      impl_->show(at);
      return;
    }
  }
  impl_->show(impl_->place); // Nothing is open any more.
}

bool QuizRun::ready() {
  return impl_->made();
}

const Question& QuizRun::question() const {
  return impl_->question;
}

bench::Scene QuizRun::scene(const appearance::View& view) const {
  return impl_->exhibit ? impl_->exhibit->scene(view, impl_->place) : bench::Scene{};
}

std::string QuizRun::in_hand() const {
  return impl_->exhibit ? impl_->exhibit->in_hand(impl_->place) : "";
}

std::string QuizRun::answer(const std::vector<std::string>& reply) {
  const std::string problem =
      impl_->log.answer(static_cast<std::size_t>(impl_->place), reply, impl_->elapsed_s);
  if (problem.empty()) {
    go_on();
  }
  return problem;
}

void QuizRun::run(double wall_s) {
  if (impl_->ended) {
    return;
  }
  impl_->elapsed_s += wall_s;
  if (impl_->elapsed_s - impl_->noted_s >= note_every_s) {
    impl_->noted_s = impl_->elapsed_s;
    (void)impl_->log.note_time(impl_->elapsed_s); // Told again with the next answer, should the disk be full.
  }
}

std::optional<double> QuizRun::left_s() const {
  const int minutes = impl_->log.state().quiz.minutes;
  return minutes > 0 ? std::optional<double>(std::max(minutes * minute_s - impl_->elapsed_s, 0.0))
                     : std::nullopt;
}

std::string QuizRun::finish() {
  impl_->ended = true;
  impl_->show(impl_->place);
  (void)marked();
  return impl_->trouble;
}

const std::string& QuizRun::trouble() const {
  return impl_->trouble;
}

bool QuizRun::finished() const {
  return impl_->ended;
}

bool QuizRun::marked() {
  if (impl_->ended && !impl_->marked) {
    impl_->trouble = impl_->mark();
  }
  return impl_->marked;
}

const scoring::Report& QuizRun::report() const {
  return impl_->report;
}

const Feedback& QuizRun::feedback(int place) const {
  return impl_->feedback.at(static_cast<std::size_t>(place));
}

std::vector<Beside> QuizRun::beside(const appearance::View& view) const {
  return impl_->marked && impl_->exhibit ? impl_->exhibit->beside(*impl_->room->maker, view)
                                         : std::vector<Beside>{};
}

bool QuizRun::beside_pending() const {
  return impl_->marked && impl_->exhibit && !impl_->exhibit->neighbours(*impl_->room->store).empty() &&
         beside({}).empty();
}

} // namespace matula::desk
