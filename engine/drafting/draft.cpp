#include "engine/drafting/draft.hpp"

#include "engine/drafting/entry.hpp"

#include <map>
#include <sstream>

namespace matula::drafting {

namespace {
constexpr std::size_t most_steps = 500; // A text is some kilobytes.
}

Draft::Draft(std::string text, std::string name, const matter::Catalogue& catalogue, unsigned first)
    : catalogue_(&catalogue), name_(std::move(name)), version_(first - 1) {
  go_to(std::move(text));
}

void Draft::go_to(std::string text) {
  text_ = std::move(text);
  ++version_;
  auto read = scenario::parse(text_, name_, *catalogue_);
  problems_ = read ? scenario::Problems{} : read.error();
  if (read) {
    read_ = std::make_shared<const scenario::Scenario>(std::move(*read));
  }
}

void Draft::replace(std::string text, const std::string& words) {
  if (text == text_) {
    return;
  }
  past_.push_back({text_, words});
  if (past_.size() > most_steps) {
    past_.erase(past_.begin());
  }
  future_.clear();
  go_to(std::move(text));
}

std::string Draft::change(const std::vector<author::Change>& changes, const std::string& words) {
  auto edited = author::save(text_, changes);
  if (!edited) {
    return edited.error();
  }
  replace(std::move(*edited), words);
  return "";
}

std::string Draft::add(const std::string& path, const std::vector<std::string>& lines,
                       const std::string& words) {
  auto edited = strict::add_element(text_, strict::path_from(path), lines);
  if (!edited) {
    return edited.error();
  }
  replace(std::move(*edited), words);
  return "";
}

std::string Draft::turn(std::vector<Step>& from, std::vector<Step>& to) {
  if (from.empty()) {
    return "";
  }
  Step step = std::move(from.back());
  from.pop_back();
  to.push_back({text_, step.words});
  go_to(std::move(step.text));
  return step.words;
}

std::string Draft::undo() {
  return turn(past_, future_);
}

std::string Draft::redo() {
  return turn(future_, past_);
}

std::string path_in_line(const std::string& text, int line) {
  std::istringstream in(text);
  std::map<std::string, int> elements; // By the path of the list.
  std::string section;
  std::string words;
  std::string own;
  for (int at = 1; at <= line && std::getline(in, words); ++at) {
    words = trimmed(words);
    own.clear();
    if (words.rfind("[[", 0) == 0) {
      const std::string list = words.substr(2, words.find(']') - 2);
      own = section = list + "[" + std::to_string(elements[list]++) + "]";
    } else if (!words.empty() && words.front() == '[') {
      own = section = words.substr(1, words.find(']') - 1);
      // [decision.options] belongs to the decision before it.
      const auto dot = section.find('.');
      const auto list = elements.find(section.substr(0, dot));
      if (dot != std::string::npos && list != elements.end()) {
        own = section = list->first + "[" + std::to_string(list->second - 1) + "]" + section.substr(dot);
      }
    } else if (const auto equals = words.find('='); equals != std::string::npos) {
      own = (section.empty() ? "" : section + ".") + trimmed(words.substr(0, equals));
    }
  }
  return own;
}

} // namespace matula::drafting
