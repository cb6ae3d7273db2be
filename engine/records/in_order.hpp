#pragma once

#include <condition_variable>
#include <cstddef>
#include <exception>
#include <mutex>
#include <optional>
#include <thread>
#include <vector>

namespace matula::records {

/// Works out `make(0)`, `make(1)` ... on several threads and hands the results to `take` in order, on the
/// caller's. Never more than `ahead` results wait. An exception of either ends the work and is passed on.
template <class Result, class Make, class Take>
void in_order(std::size_t count, int threads, Make make, Take take) {
  constexpr std::size_t ahead = 32;
  std::mutex guard;
  std::condition_variable changed;
  std::vector<std::optional<Result>> made(count);
  std::exception_ptr wrong;
  std::size_t next = 0;
  std::size_t taken = 0;
  bool stop = false;
  const auto work = [&] {
    std::unique_lock<std::mutex> lock(guard);
    while (true) {
      changed.wait(lock, [&] { return stop || next >= count || next < taken + ahead; });
      if (stop || next >= count) {
        return;
      }
      const std::size_t mine = next++;
      lock.unlock();
      std::optional<Result> result;
      std::exception_ptr failed;
      try {
        result = make(mine);
      } catch (...) {
        failed = std::current_exception();
      }
      lock.lock();
      made[mine] = std::move(result);
      if (failed) {
        wrong = failed;
        stop = true;
      }
      changed.notify_all();
    }
  };
  std::vector<std::thread> workers;
  for (int i = 0; i < threads && static_cast<std::size_t>(i) < count; ++i) {
    workers.emplace_back(work);
  }
  const auto end = [&] {
    {
      const std::lock_guard<std::mutex> lock(guard);
      stop = true;
    }
    changed.notify_all();
    for (auto& worker : workers) {
      worker.join();
    }
  };
  try {
    for (std::size_t i = 0; i < count; ++i) {
      std::optional<Result> result;
      {
        std::unique_lock<std::mutex> lock(guard);
        changed.wait(lock, [&] { return wrong || made[i].has_value(); });
        if (wrong) {
          std::rethrow_exception(wrong);
        }
        result = std::move(made[i]);
        made[i].reset();
        taken = i + 1;
      }
      changed.notify_all();
      take(i, std::move(*result));
    }
  } catch (...) {
    end();
    throw;
  }
  end();
}

} // namespace matula::records
