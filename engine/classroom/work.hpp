#pragma once

#include "engine/records/import.hpp"

#include <atomic>
#include <functional>
#include <mutex>
#include <string>

namespace matula::classroom {

/// How far a piece of long work has come, read while it runs.
struct WorkState {
  bool running = false;
  bool stopping = false; ///< It was asked to stop, and finishes what is at hand.
  std::string what;      ///< "sittings taken in"
  std::size_t done = 0;
  std::size_t total = 0;
  std::string last; ///< What was dealt with last, and what became of it.
};

/// How it ended.
struct WorkEnd {
  std::string trouble; ///< Why it failed; empty when it did not.
  bool stopped = false;
  std::size_t done = 0; ///< Dealt with; when stopped, what was stored of them stays stored.
  std::size_t total = 0;

  [[nodiscard]] bool whole() const { return trouble.empty() && !stopped; }
};

/// Long work on the thread that calls `run`, watched and stopped from another.
class Work {
public:
  void prepare(); ///< Before the work is handed to its thread.
  /// Does it. What it throws becomes trouble, a stop is noted.
  WorkEnd run(const std::function<void()>& work);
  void stop() { stop_ = true; }
  [[nodiscard]] WorkState state() const;

  // From within the work.
  void begin(const std::string& what); ///< A part of it, with its own count.
  /// Notes a step; leaves the work when it was asked to stop.
  void step(std::size_t done, std::size_t total, const std::string& last);
  [[nodiscard]] records::Progress progress(); ///< The same as the records want it.

private:
  mutable std::mutex guard_;
  WorkState state_;
  std::atomic<bool> stop_{false};
};

} // namespace matula::classroom
