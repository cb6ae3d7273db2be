#include "engine/classroom/work.hpp"

namespace matula::classroom {
namespace {

/// Thrown from within to leave the work; what is stored stays.
struct Stopped {};

} // namespace

void Work::prepare() {
  stop_ = false;
  const std::lock_guard<std::mutex> lock(guard_);
  state_ = {};
  state_.running = true;
}

WorkState Work::state() const {
  const std::lock_guard<std::mutex> lock(guard_);
  WorkState state = state_;
  state.stopping = state.running && stop_;
  return state;
}

void Work::begin(const std::string& what) {
  const std::lock_guard<std::mutex> lock(guard_);
  state_.what = what;
  state_.done = state_.total = 0;
}

void Work::step(std::size_t done, std::size_t total, const std::string& last) {
  {
    const std::lock_guard<std::mutex> lock(guard_);
    state_.done = done;
    state_.total = total;
    state_.last = last;
  }
  if (stop_) {
    throw Stopped{};
  }
}

records::Progress Work::progress() {
  return [this](const records::Step& one) { step(one.done, one.total, one.came_from + ": " + one.words); };
}

WorkEnd Work::run(const std::function<void()>& work) {
  WorkEnd end;
  try {
    work();
  } catch (const Stopped&) {
    end.stopped = true;
  } catch (const std::exception& trouble) {
    end.trouble = trouble.what();
  }
  const std::lock_guard<std::mutex> lock(guard_);
  state_.running = false;
  end.done = state_.done;
  end.total = state_.total;
  return end;
}

} // namespace matula::classroom
