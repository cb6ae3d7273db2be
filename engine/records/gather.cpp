#include "engine/records/gather.hpp"

#include "engine/records/sizes.hpp"
#include "engine/records/trouble.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/sitting/log.hpp"
#include "engine/strict/file.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <fstream>
#include <nlohmann/json.hpp>

namespace matula::records {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t most_line = 4096;

std::string first_line(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::string line(most_line, '\0');
  in.read(line.data(), static_cast<std::streamsize>(line.size()));
  line.resize(static_cast<std::size_t>(in.gcount()));
  return line.substr(0, line.find('\n'));
}

bool begins_like_a_log(const fs::path& file) {
  return first_line(file).find("\"matula_sitting\"") != std::string::npos;
}

/// The key of a scenario, as a log's first line names it; a path in it is no business of ours.
std::string key_of(const std::string& line) {
  const auto head = nlohmann::json::parse(line, nullptr, false);
  if (!head.is_object() || !head.contains("scenario") || !head["scenario"].is_string()) {
    return "";
  }
  return fs::path(head["scenario"].get<std::string>()).filename().string();
}

std::string hash_of(const std::string& line) {
  const auto head = nlohmann::json::parse(line, nullptr, false);
  return head.is_object() ? head.value("scenario_hash", "") : "";
}

} // namespace

std::vector<Found> find_logs(const fs::path& folder, std::vector<Refused>& refused) {
  std::error_code wrong;
  if (!fs::is_directory(folder, wrong)) {
    throw Trouble(folder.string() + " is no folder that can be read.");
  }
  std::vector<fs::path> files;
  for (auto at =
           fs::recursive_directory_iterator(folder, fs::directory_options::skip_permission_denied, wrong);
       at != fs::recursive_directory_iterator(); at.increment(wrong)) {
    if (wrong) {
      throw Trouble(folder.string() + " cannot be read: " + wrong.message());
    }
    if (at->path().extension() == ".jsonl" && at->is_regular_file(wrong)) {
      files.push_back(at->path());
    }
  }
  std::sort(files.begin(), files.end());
  std::vector<Found> found;
  for (const fs::path& file : files) {
    if (!begins_like_a_log(file)) {
      continue;
    }
    const fs::path within = fs::relative(file, folder, wrong);
    if (std::distance(within.begin(), within.end()) < 2) {
      refused.push_back(
          {file.string(), "it lies in no student's folder; put it into one named by the pseudonym"});
      continue;
    }
    found.push_back({file, within.begin()->string()});
  }
  return found;
}

Incoming read_found(const Found& found, const ScenarioFolders& scenarios, std::string& wrong) {
  Incoming in;
  in.pseudonym = found.pseudonym;
  in.came_from = found.file.string();
  std::error_code ignored;
  if (fs::file_size(found.file, ignored) > most_log_bytes || !strict::read_text(found.file, in.log_text)) {
    wrong = "it cannot be read, or is larger than any sitting could be";
    return in;
  }
  const std::string line = in.log_text.substr(0, in.log_text.find('\n'));
  in.exercise = key_of(line);
  in.scenario_file = in.exercise + ".toml";
  bool there = false;
  for (const fs::path& folder : scenarios) {
    std::string text;
    if (!in.exercise.empty() && fs::is_regular_file(folder / in.scenario_file, ignored) &&
        strict::read_text(folder / in.scenario_file, text)) {
      there = true;
      if (scenario::text_hash(text) == hash_of(line)) {
        in.scenario_text = std::move(text);
        return in;
      }
    }
  }
  wrong = there ? fmt::format("it was sat at another version of the scenario '{}' than the one you have",
                              in.exercise)
                : fmt::format("you have no scenario '{}'; name the folder it is in", in.exercise);
  return in;
}

} // namespace matula::records
