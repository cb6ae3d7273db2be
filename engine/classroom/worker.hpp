#pragma once

#include <condition_variable>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>

namespace matula::classroom {

/// One thread that does jobs one after the other. What comes of a job is handed back by `deliver`, and taken
/// in on the caller's thread by `collect`.
class Worker {
public:
  /// What the caller's thread does with the result.
  using Delivery = std::function<void()>;

  Worker();
  ~Worker(); ///< Waits for the job at hand; those not begun are dropped.
  Worker(const Worker&) = delete;
  Worker& operator=(const Worker&) = delete;

  /// Jobs must not throw.
  void add(std::function<void()> job);
  /// From within a job.
  void deliver(Delivery delivery);

  /// Takes in all that was delivered; true when there was something.
  bool collect();
  [[nodiscard]] bool busy() const; ///< A job is at hand or waits, or something has not been collected.

private:
  void run();

  mutable std::mutex guard_;
  std::condition_variable changed_;
  std::deque<std::function<void()>> jobs_;
  std::deque<Delivery> delivered_;
  bool at_work_ = false;
  bool stop_ = false;
  std::thread thread_;
};

} // namespace matula::classroom
