#include "engine/drafting/newest.hpp"

namespace matula::drafting {

Newest::Newest() : thread_([this](const std::stop_token& stop) { run(stop); }) {}

Newest::~Newest() {
  thread_.request_stop();
  changed_.notify_all();
}

void Newest::want(Work work) {
  {
    const std::lock_guard lock(guard_);
    next_ = std::move(work);
    ++wanted_;
  }
  changed_.notify_all();
}

void Newest::drop() {
  want({});
}

bool Newest::busy() const {
  const std::lock_guard lock(guard_);
  return running_ || next_ != nullptr;
}

void Newest::wait() const {
  std::unique_lock lock(guard_);
  changed_.wait(lock, [this] { return !running_ && next_ == nullptr; });
}

void Newest::run(const std::stop_token& stop) {
  std::unique_lock lock(guard_);
  while (changed_.wait(lock, stop, [this] { return next_ != nullptr; })) {
    const Work work = std::move(next_);
    next_ = nullptr;
    running_ = true;
    const unsigned mine = wanted_;
    lock.unlock();
    work([this, mine, &stop] {
      const std::lock_guard look(guard_);
      return stop.stop_requested() || mine != wanted_;
    });
    lock.lock();
    running_ = false;
    changed_.notify_all();
  }
}

} // namespace matula::drafting
