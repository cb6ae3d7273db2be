#include "engine/classroom/playback.hpp"

#include "engine/classroom/recording.hpp"
#include "sim/bench/bench.hpp"

#include <algorithm>
#include <iterator>

namespace matula::classroom {
namespace {

constexpr double longest_frame_s = 0.25;
constexpr double slowest = 0.1;
constexpr double fastest = 36000;

bool is_wait(const sitting::Event& event) {
  const auto* action = std::get_if<bench::Action>(&event.what);
  const auto* wait = action == nullptr ? nullptr : std::get_if<bench::Wait>(action);
  return wait != nullptr && wait->seconds > 0;
}

} // namespace

struct Playback::Impl {
  std::shared_ptr<const Recording> recording;
  sitting::Session base;                ///< After the last line taken.
  std::optional<sitting::Session> free; ///< On show instead of it: on the way to or from it.
  std::size_t done = 0;
  double head_s = 0; ///< Bench time the picture has come to.
  appearance::View view;
  double eye_mm = 0;
  bench::VesselName in_hand = "specimen";

  explicit Impl(std::shared_ptr<const Recording> of)
      : recording(std::move(of)), base(recording->kept.front().session) {}

  [[nodiscard]] const std::vector<sitting::Event>& events() const { return recording->events; }
  [[nodiscard]] const sitting::Session& shown() const { return free ? *free : base; }

  /// When the next line happens: a log written by hand may hold earlier times, and acts take theirs.
  [[nodiscard]] double due_s() const { return std::max(events()[done].time_s, base.time_s()); }

  void take_one() {
    const sitting::Event& event = events()[done];
    if (!is_wait(event)) {
      free.reset();
    } else if (!free) {
      free = base; // The wait is watched from here on, while `base` is at its end already.
    }
    base.take(event);
    ++done;
  }

  /// What the student's hands and eyes were on after the lines taken.
  void find_eyes() {
    view = {};
    eye_mm = 0;
    in_hand = "specimen";
    for (std::size_t i = 0; i < done; ++i) {
      const auto* action = std::get_if<bench::Action>(&events()[i].what);
      if (action == nullptr || recording->lines[i].refused) {
        continue;
      }
      if (const auto* look = std::get_if<bench::Look>(action)) {
        view = look->view;
        eye_mm = look->eye_mm;
      }
      if (!recording->lines[i].vessel.empty()) {
        in_hand = recording->lines[i].vessel;
      }
    }
  }

  void go_to(std::size_t wanted) {
    free.reset();
    const auto& kept = recording->kept;
    const auto after =
        std::upper_bound(kept.begin(), kept.end(), wanted,
                         [](std::size_t n, const Recording::Kept& one) { return n < one.done; });
    const auto& nearest = *std::prev(after);
    if (wanted < done || nearest.done > done) {
      base = nearest.session;
      done = nearest.done;
    }
    while (done < wanted) {
      base.take(events()[done++]);
    }
    head_s = base.time_s();
    find_eyes();
  }

  /// Runs the picture on to `head_s`.
  void follow() {
    if (head_s <= base.time_s()) {
      if (free) {
        free->run_to(head_s); // In the middle of a wait; after any other act the bench is there already.
      }
      return;
    }
    if (!free || free->time_s() < base.time_s()) {
      free = base;
    }
    free->run_to(head_s);
  }
};

Playback::Playback(std::shared_ptr<const Recording> recording)
    : impl_(std::make_unique<Impl>(std::move(recording))) {}
Playback::~Playback() = default;
Playback::Playback(Playback&&) noexcept = default;
Playback& Playback::operator=(Playback&&) noexcept = default;

const std::vector<Line>& Playback::lines() const {
  return impl_->recording->lines;
}

const std::vector<Charged>& Playback::elsewhere() const {
  return impl_->recording->elsewhere;
}

std::size_t Playback::done() const {
  return impl_->done;
}

bool Playback::at_end() const {
  return impl_->done == impl_->events().size() && impl_->head_s >= impl_->base.time_s();
}

std::optional<std::size_t> Playback::at() const {
  for (std::size_t i = impl_->done; i > 0; --i) {
    if (!lines()[i - 1].tick) {
      return i - 1;
    }
  }
  return std::nullopt;
}

double Playback::time_s() const {
  return impl_->head_s;
}

double Playback::end_s() const {
  return impl_->recording->end_s;
}

void Playback::set_speed(double times) {
  speed_ = std::clamp(times, slowest, fastest);
}

void Playback::advance(double wall_s) {
  if (!playing_) {
    return;
  }
  Impl& here = *impl_;
  here.head_s += std::min(wall_s, longest_frame_s) * speed_;
  const std::size_t before = here.done;
  while (here.done < here.events().size() && here.due_s() <= here.head_s) {
    here.take_one();
  }
  if (here.done != before) {
    here.find_eyes();
  }
  if (here.done == here.events().size() && here.head_s >= here.base.time_s()) {
    here.free.reset();
    here.head_s = here.base.time_s();
    playing_ = false;
    return;
  }
  here.follow();
}

void Playback::step() {
  std::size_t next = impl_->done;
  while (next < lines().size() && lines()[next].tick) {
    ++next;
  }
  jump(next + 1);
}

void Playback::step_back() {
  const auto now = at();
  std::size_t wanted = 0;
  for (std::size_t i = now.value_or(0); i > 0; --i) {
    if (!lines()[i - 1].tick) {
      wanted = i;
      break;
    }
  }
  jump(wanted);
}

void Playback::jump(std::size_t done) {
  playing_ = false;
  impl_->go_to(std::min(done, impl_->events().size()));
}

const appearance::View& Playback::view() const {
  return impl_->view;
}

double Playback::eye_mm() const {
  return impl_->eye_mm;
}

const bench::VesselName& Playback::in_hand() const {
  return impl_->in_hand;
}

bench::Scene Playback::scene(const appearance::View& view) const {
  return impl_->shown().scene(view);
}

const std::map<std::string, std::string>& Playback::worksheet() const {
  return impl_->base.worksheet();
}

std::string Playback::name_of(const std::string& item) const {
  return impl_->recording->names.item(item);
}

std::string Playback::value_of(const std::string& item, const std::string& value) const {
  return impl_->recording->names.value(item, value);
}

bool Playback::gloves() const {
  return impl_->base.state().gloves;
}

bool Playback::goggles() const {
  return impl_->base.state().goggles;
}

std::uint64_t Playback::state_hash() const {
  return bench::state_hash(impl_->base.state());
}

} // namespace matula::classroom
