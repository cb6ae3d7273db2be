#include "engine/practice/quiz_log.hpp"

#include "engine/strict/disk.hpp"
#include "engine/strict/file.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

namespace matula::practice {

namespace {

using nlohmann::json;
using scenario::Problem;
using scenario::Problems;
namespace fs = std::filesystem;

constexpr int format = 1;

std::string header_line(const Quiz& quiz) {
  json line{{"matula_quiz", format},
            {"blueprint", quiz.blueprint},
            {"title", quiz.title},
            {"minutes", quiz.minutes},
            {"seed", quiz.seed}};
  for (const Unknown& unknown : quiz.unknowns) {
    line["unknowns"].push_back(to_text(unknown));
  }
  return line.dump();
}

/// What is wrong with the first line; empty when it is read.
std::string read_header(const json& line, QuizState& state) {
  if (line.value("matula_quiz", 0) != format) {
    return "\"matula_quiz\":1, as this program writes it";
  }
  auto& quiz = state.quiz;
  quiz.blueprint = line.value("blueprint", "");
  quiz.title = line.value("title", "");
  quiz.minutes = line.value("minutes", 0);
  quiz.seed = line.value("seed", std::uint64_t{0});
  for (const json& text : line.value("unknowns", json::array())) {
    const auto unknown = text.is_string() ? unknown_from_text(text.get<std::string>()) : std::nullopt;
    if (!unknown) {
      return "unknowns such as \"turbidity/ssa/plain/2.3000/17\"";
    }
    quiz.unknowns.push_back(*unknown);
  }
  state.replies.resize(quiz.unknowns.size());
  return quiz.unknowns.empty() ? "at least one unknown" : "";
}

std::string read_later(const json& line, QuizState& state) {
  const double elapsed_s = line.value("elapsed_s", -1.0);
  if (!(elapsed_s >= 0)) {
    return "\"elapsed_s\", 0 or more";
  }
  if (line.contains("answer")) {
    const auto place = line["answer"].get<std::size_t>();
    if (place >= state.replies.size() || state.replies[place]) {
      return "an unknown that has no answer yet";
    }
    state.replies[place] = line.value("reply", Reply{});
  }
  state.elapsed_s = std::max(state.elapsed_s, elapsed_s);
  state.finished = state.finished || line.value("finished", false);
  return "";
}

/// What a line should have been; empty when it is read.
std::string read_line(const std::string& text, bool first, QuizState& state) {
  try {
    const json line = json::parse(text);
    return first ? read_header(line, state) : read_later(line, state);
  } catch (const json::exception&) {
    return first ? "the first line of a quiz" : "an answer, a time or the end of a quiz";
  }
}

bool put_on_disk(const fs::path& file, const std::string& line, int flags) {
  constexpr int everyone_reads = 0644;
  const int descriptor = ::open(file.c_str(), O_WRONLY | O_APPEND | O_CLOEXEC | flags, everyone_reads);
  if (descriptor < 0) {
    return false;
  }
  const bool good = strict::put_at_end(descriptor, line + "\n");
  ::close(descriptor);
  return good;
}

std::string why_refused(const fs::path& file) {
  return file.string() + ": " + std::strerror(errno);
}

} // namespace

tl::expected<QuizState, Problems> read_quiz(const fs::path& file) {
  std::string text;
  Problems problems;
  if (!strict::read_text(file, text)) {
    return tl::make_unexpected(Problems{{file.string(), 0, 0, "", "a file that cannot be read", "a quiz"}});
  }
  QuizState state;
  int number = 0;
  std::size_t from = 0;
  for (std::size_t end = text.find('\n'); end != std::string::npos; end = text.find('\n', from)) {
    const std::string line = text.substr(from, end - from);
    from = end + 1;
    const std::string expected = read_line(line, ++number == 1, state);
    if (!expected.empty()) {
      problems.push_back({file.string(), number, 1, line, "what is no line of a quiz", expected});
    }
  }
  if (number == 0) {
    problems.push_back({file.string(), 0, 0, "", "an empty file", "a quiz"});
  }
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return state;
}

tl::expected<QuizLog, Problems> QuizLog::begin(const fs::path& folder, const Quiz& quiz) {
  std::error_code ignored; // A folder that cannot be made is told of when the file is.
  fs::create_directories(folder, ignored);
  fs::path file;
  int number = 1;
  do {
    file = folder / fmt::format("{}-{}.jsonl", quiz.blueprint, number++);
  } while (fs::exists(file));
  QuizState state;
  state.quiz = quiz;
  state.replies.resize(quiz.unknowns.size());
  if (!put_on_disk(file, header_line(quiz), O_CREAT | O_EXCL)) {
    return tl::make_unexpected(Problems{
        {file.string(), 0, 0, "", why_refused(file), "a folder that can be written, and room on the disk"}});
  }
  return QuizLog(file, std::move(state));
}

tl::expected<QuizLog, Problems> QuizLog::resume(const fs::path& file) {
  auto state = read_quiz(file);
  if (!state) {
    return tl::make_unexpected(state.error());
  }
  // The cut-off piece of a last line goes, so that the next one begins where a line begins.
  std::string text;
  (void)strict::read_text(file, text);
  const auto whole = text.rfind('\n');
  if (whole + 1 < text.size()) {
    std::error_code failed;
    fs::resize_file(file, whole + 1, failed);
    if (failed) {
      return tl::make_unexpected(
          Problems{{file.string(), 0, 0, "", failed.message(), "a file that can be written"}});
    }
  }
  return QuizLog(file, std::move(*state));
}

std::string QuizLog::put(const std::string& line) const {
  return put_on_disk(file_, line, 0) ? "" : why_refused(file_);
}

std::string QuizLog::answer(std::size_t unknown, const Reply& reply, double elapsed_s) {
  if (state_.finished || unknown >= state_.replies.size() || state_.replies[unknown]) {
    return "There is an answer to this unknown already.";
  }
  const std::string problem =
      put(json{{"answer", unknown}, {"reply", reply}, {"elapsed_s", elapsed_s}}.dump());
  if (problem.empty()) {
    state_.replies[unknown] = reply;
    state_.elapsed_s = std::max(state_.elapsed_s, elapsed_s);
  }
  return problem;
}

std::string QuizLog::note_time(double elapsed_s) {
  state_.elapsed_s = std::max(state_.elapsed_s, elapsed_s);
  return put(json{{"elapsed_s", elapsed_s}}.dump());
}

std::string QuizLog::finish(double elapsed_s) {
  const std::string problem = put(json{{"finished", true}, {"elapsed_s", elapsed_s}}.dump());
  state_.finished = state_.finished || problem.empty();
  return problem;
}

std::vector<fs::path> quiz_files(const fs::path& folder) {
  return strict::files_in(folder, ".jsonl");
}

} // namespace matula::practice
