#include "engine/classroom/worker.hpp"

#include <utility>

namespace matula::classroom {

Worker::Worker() : thread_([this] { run(); }) {}

Worker::~Worker() {
  {
    const std::lock_guard<std::mutex> lock(guard_);
    stop_ = true;
    jobs_.clear();
  }
  changed_.notify_all();
  thread_.join();
}

void Worker::add(std::function<void()> job) {
  {
    const std::lock_guard<std::mutex> lock(guard_);
    jobs_.push_back(std::move(job));
  }
  changed_.notify_all();
}

void Worker::deliver(Delivery delivery) {
  const std::lock_guard<std::mutex> lock(guard_);
  delivered_.push_back(std::move(delivery));
}

bool Worker::collect() {
  std::deque<Delivery> now;
  {
    const std::lock_guard<std::mutex> lock(guard_);
    now.swap(delivered_);
  }
  for (const Delivery& one : now) {
    one();
  }
  return !now.empty();
}

bool Worker::busy() const {
  const std::lock_guard<std::mutex> lock(guard_);
  return at_work_ || !jobs_.empty() || !delivered_.empty();
}

void Worker::run() {
  std::unique_lock<std::mutex> lock(guard_);
  while (true) {
    changed_.wait(lock, [this] { return stop_ || !jobs_.empty(); });
    if (stop_) {
      return;
    }
    auto job = std::move(jobs_.front());
    jobs_.pop_front();
    at_work_ = true;
    lock.unlock();
    job();
    job = nullptr; // What it holds goes before it counts as done.
    lock.lock();
    at_work_ = false;
  }
}

} // namespace matula::classroom
