#pragma once

#include "engine/scoring/by_the_book.hpp"

#include <condition_variable>
#include <functional>
#include <mutex>
#include <thread>

namespace matula::drafting {

/// A thread that does the newest piece of work alone: a newer one makes it give up the one before at once.
class Newest {
public:
  /// Hears through `give_up` when it is no longer wanted; whatever it finds it hands over itself.
  using Work = std::function<void(const scoring::GiveUp& give_up)>;

  Newest();
  /// Gives up what runs and waits until it has ended.
  ~Newest();
  Newest(const Newest&) = delete;
  Newest& operator=(const Newest&) = delete;

  void want(Work work);
  void drop(); ///< What runs is given up, and nothing follows.
  /// Whether something runs or is about to. When false, everything it found has been handed over.
  [[nodiscard]] bool busy() const;
  /// Until there is nothing to do, for whoever may wait.
  void wait() const;

private:
  void run(const std::stop_token& stop);

  mutable std::mutex guard_;
  mutable std::condition_variable_any changed_;
  Work next_;
  bool running_ = false;
  unsigned wanted_ = 0; ///< Rises with every wish; a piece of work of an older one is given up.
  std::jthread thread_; ///< Last: it uses all of the above.
};

} // namespace matula::drafting
