#include "engine/learner/record.hpp"

#include "engine/learner/line.hpp"
#include "engine/sitting/json_lines.hpp"
#include "engine/strict/disk.hpp"
#include "engine/strict/file.hpp"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

namespace matula::learner {

namespace {

struct Split {
  std::vector<std::string_view> whole;
  std::string_view rest; ///< After the last end of a line.
};

Split split(std::string_view text) {
  Split lines;
  std::size_t from = 0;
  for (std::size_t end = text.find('\n'); end != std::string_view::npos; end = text.find('\n', from)) {
    lines.whole.push_back(text.substr(from, end - from));
    from = end + 1;
  }
  lines.rest = text.substr(from);
  return lines;
}

bool says_cut_off(std::string_view text) {
  return text.find(cut_off_key) != std::string_view::npos && read_line(text).kind == LineKind::CutOff;
}

/// A record's text, read line by line.
class Reader {
public:
  explicit Reader(const std::string& file) : at_line_(file, record_.problems) {}

  Record read(std::string_view text) {
    const Split lines = split(text);
    for (std::size_t i = 0; i < lines.whole.size(); ++i) {
      const bool piece = i + 1 < lines.whole.size() && says_cut_off(lines.whole[i + 1]);
      if (!piece && !lines.whole[i].empty()) {
        take(static_cast<int>(i + 1), lines.whole[i]);
      }
    }
    // The end of a last line is written last: what is whole without it is an answer, anything else a piece.
    const Line rest = read_line(lines.rest);
    if (rest.kind == LineKind::Answer) {
      record_.answers.push_back(rest.answer);
    }
    return std::move(record_);
  }

private:
  void take(int number, std::string_view text) {
    Line line = read_line(text);
    if (!begun_ && line.kind != LineKind::CutOff) {
      begun_ = true;
      if (line.kind == LineKind::Answer) {
        at_line_.add(number, text,
                     {{"an answer where the record should begin", "a first line " + header_line()}});
      }
    }
    if (line.kind == LineKind::Answer) {
      record_.answers.push_back(std::move(line.answer));
    }
    at_line_.add(number, text, line.wrongs);
  }

  Record record_;
  sitting::LineProblems at_line_;
  bool begun_ = false;
};

scenario::Problems refused(const std::filesystem::path& file) {
  return {{file.string(), 0, 0, "",
           "a file that cannot be written (" + std::string(std::strerror(errno)) + ")",
           "a record in a folder that can be written, and room on the disk"}};
}

/// What has to stand before a new answer, after what stands there already.
std::string before_answers(std::string_view there) {
  const Split lines = split(there);
  std::string words;
  const bool piece = !lines.rest.empty();
  const LineKind last = read_line(lines.rest).kind;
  if (piece) {
    words += "\n";
  }
  if (piece && last == LineKind::Wrong) {
    words += cut_off_line() + "\n";
  }
  // No first line was ever whole.
  if (lines.whole.empty() && last == LineKind::Wrong) {
    words += header_line() + "\n";
  }
  return words;
}

/// A record of a later program must not be added to in the manner of this one.
scenario::Problems other_format(const std::filesystem::path& file, std::string_view there) {
  scenario::Problems problems;
  sitting::LineProblems at_line(file.string(), problems);
  int number = 0;
  for (const std::string_view text : split(there).whole) {
    ++number;
    if (text.find(header_key) != std::string_view::npos) {
      const Line line = read_line(text);
      at_line.add(number, text,
                  line.kind == LineKind::OtherHeader ? line.wrongs : std::vector<sitting::Wrong>{});
    }
  }
  return problems;
}

scenario::Problems append_locked(const std::filesystem::path& file, int descriptor,
                                 const std::string& answers) {
  std::string there;
  if (!strict::read_text(file, there)) {
    return refused(file);
  }
  scenario::Problems problems = other_format(file, there);
  if (problems.empty() && !strict::put(descriptor, before_answers(there) + answers)) {
    problems = refused(file);
  }
  if (problems.empty() && there.empty()) {
    strict::keep_folder_entry(file);
  }
  return problems;
}

} // namespace

Record load(const std::filesystem::path& file) {
  std::error_code none;
  if (!std::filesystem::exists(file, none)) {
    return {};
  }
  std::string text;
  if (std::filesystem::is_directory(file, none) || !strict::read_text(file, text)) {
    return {{}, {{file.string(), 0, 0, "", "no readable file", "a learner's record at this place"}}};
  }
  return Reader(file.string()).read(text);
}

scenario::Problems append(const std::filesystem::path& file, const std::vector<Answer>& answers) {
  scenario::Problems problems;
  sitting::LineProblems at_line(file.string(), problems);
  std::string words;
  for (const Answer& answer : answers) {
    const std::string line = to_line(answer);
    at_line.add(0, line, read_line(line).wrongs); // What could not be read again is not written.
    words += line + "\n";
  }
  if (!problems.empty()) {
    return problems;
  }
  constexpr int owner_writes = 0644;
  const int descriptor = ::open(file.c_str(), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, owner_writes);
  if (descriptor < 0) {
    return refused(file);
  }
  // Two programs may keep one record; the lock goes with the descriptor.
  problems = ::flock(descriptor, LOCK_EX) == 0 ? append_locked(file, descriptor, words) : refused(file);
  ::close(descriptor);
  return problems;
}

} // namespace matula::learner
