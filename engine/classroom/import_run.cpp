#include "engine/classroom/import_run.hpp"

#include "engine/records/trouble.hpp"

#include <fmt/format.h>

namespace matula::classroom {
namespace {

/// Thrown from within to leave the import; what is stored stays.
struct Stopped {};

} // namespace

void ImportRun::prepare() {
  stop_ = false;
  const std::lock_guard<std::mutex> lock(guard_);
  state_ = {};
  state_.running = true;
}

ImportState ImportRun::state() const {
  const std::lock_guard<std::mutex> lock(guard_);
  ImportState state = state_;
  state.stopping = state.running && stop_;
  return state;
}

ImportEnd ImportRun::run(const std::string& address, const std::function<records::Marker&()>& marker,
                         const ImportOrder& order) {
  ImportEnd end;
  end.folder = order.folder.string();
  const auto progress = [this](const records::Step& step) {
    {
      const std::lock_guard<std::mutex> lock(guard_);
      state_.done = step.done;
      state_.total = step.total;
      state_.last = step.came_from + ": " + step.words;
    }
    if (stop_) {
      throw Stopped{};
    }
  };
  try {
    records::Store store(address); // Its own connection: others go on reading meanwhile.
    const records::ImportWishes wishes{order.label, order.keep_until, order.threads, order.now_s};
    end.sum = records::import_folder(store, marker(), order.folder, order.scenarios, wishes, progress);
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

std::string ImportEnd::words() const {
  if (!trouble.empty()) {
    return trouble;
  }
  if (stopped) {
    return fmt::format("Stopped after {} of {} sittings. What was taken in stays; import the folder again "
                       "and the rest follows.",
                       done, total);
  }
  return fmt::format("{}: {} new, {} known already, {} not taken.", folder, sum->fresh, sum->known,
                     sum->refused.size());
}

} // namespace matula::classroom
