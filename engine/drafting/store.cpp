#include "engine/drafting/store.hpp"

#include "engine/strict/disk.hpp"
#include "engine/strict/file.hpp"

#include <algorithm>

namespace matula::drafting {

namespace fs = std::filesystem;

std::string name_problem(const std::string& name) {
  const auto fits = [](char letter) {
    return (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9') || letter == '_' ||
           letter == '-';
  };
  constexpr std::size_t longest = 60;
  if (name.empty()) {
    return "Give the case a name for its file: small letters, digits, _ and -.";
  }
  return std::all_of(name.begin(), name.end(), fits) && name.size() <= longest
             ? ""
             : "\"" + name +
                   "\" will not do as a file's name: small letters, digits, _ and -, sixty at most.";
}

std::string Store::open(const fs::path& file, std::string& text) {
  if (!strict::read_text(file, text)) {
    return file.string() + " cannot be read.";
  }
  file_ = file;
  on_disk_ = text;
  return "";
}

void Store::forget() {
  file_.reset();
  on_disk_.clear();
}

Saved Store::save(const std::string& name, const std::string& text, bool replace) {
  if (const std::string problem = name_problem(name); !problem.empty()) {
    return {Saved::Outcome::Refused, problem};
  }
  std::error_code failed;
  if (fs::exists(shipped_ / (name + ".toml"), failed)) {
    return {Saved::Outcome::Refused,
            "A case called " + name + " comes with the program. Give yours another name."};
  }
  const fs::path file = own_ / (name + ".toml");
  std::string there;
  const bool exists = fs::exists(file, failed);
  const bool readable = exists && strict::read_text(file, there);
  const bool mine = file_ && *file_ == file;
  if (exists && !replace && !(readable && (there == text || (mine && there == on_disk_)))) {
    return {Saved::Outcome::Asks, mine ? file.string() + " was changed by someone else since you opened it."
                                       : "There is another case in " + file.string() + "."};
  }
  fs::create_directories(own_, failed); // What cannot be made is told when the file is written.
  if (const std::string why = strict::write_whole(file, text); !why.empty()) {
    return {Saved::Outcome::Refused, file.string() + " cannot be written: " + why + ". Nothing was changed."};
  }
  file_ = file;
  on_disk_ = text;
  return {Saved::Outcome::Written, "Saved as " + file.string() + "."};
}

} // namespace matula::drafting
