#pragma once

#include "engine/records/import.hpp"

#include <atomic>
#include <filesystem>
#include <functional>
#include <mutex>
#include <optional>
#include <string>

namespace matula::classroom {

/// What is to be taken in.
struct ImportOrder {
  std::filesystem::path folder;       ///< Holds a folder for every student.
  records::ScenarioFolders scenarios; ///< The instructor's own.
  std::string label;
  std::string keep_until; ///< "2027-09-30"; empty for no end.
  int threads = 2;
  std::int64_t now_s = 0;
};

/// How far an import has come, read while it runs.
struct ImportState {
  bool running = false;
  bool stopping = false; ///< It was asked to stop, and finishes the sitting at hand.
  std::size_t done = 0;
  std::size_t total = 0;
  std::string last; ///< The sitting dealt with last, and what became of it.
};

/// How it ended.
struct ImportEnd {
  std::string folder;
  std::optional<records::ImportSum> sum; ///< Nothing when it was stopped or failed.
  std::string trouble;                   ///< Why it failed; empty when it did not.
  bool stopped = false;
  std::size_t done = 0; ///< Sittings dealt with; when stopped, what was new of them stays stored.
  std::size_t total = 0;

  /// One or two sentences.
  [[nodiscard]] std::string words() const;
};

/// One import on the thread that calls `run`, watched and stopped from another.
class ImportRun {
public:
  /// `marker` is asked for on this thread: making it reads files.
  ImportEnd run(const std::string& address, const std::function<records::Marker&()>& marker,
                const ImportOrder& order);
  void stop() { stop_ = true; }
  void prepare(); ///< Before `run` is handed to its thread.
  [[nodiscard]] ImportState state() const;

private:
  mutable std::mutex guard_;
  ImportState state_;
  std::atomic<bool> stop_{false};
};

} // namespace matula::classroom
