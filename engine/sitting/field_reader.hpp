#pragma once

#include "engine/scenario/problem.hpp"
#include "engine/sitting/words.hpp"

#include <nlohmann/json.hpp>

#include <set>
#include <string>
#include <string_view>

namespace matula::sitting {

/// Reads the fields of one JSON line and remembers everything that is wrong with it.
class FieldReader {
public:
  FieldReader(std::string_view line, std::string file, int line_number);

  void must(const char* name, std::string& value) { read_text(name, value, true); }
  void must(const char* name, double& value, double least, double most) {
    read_number(name, value, least, most, true);
  }
  void may(const char* name, double& value, double least, double most) {
    read_number(name, value, least, most, false);
  }
  void may(const char* name, bool& value);

  template <class Choice> void must(const char* name, Choice& value) { read_choice(name, value, true); }
  template <class Choice> void may(const char* name, Choice& value) { read_choice(name, value, false); }

  void complain(const std::string& found, const std::string& expected);
  void refuse_unknown();
  void ignore_the_rest() { object_.clear(); }
  [[nodiscard]] const scenario::Problems& problems() const { return problems_; }

private:
  void read_text(const char* name, std::string& value, bool needed);
  void read_number(const char* name, double& value, double least, double most, bool needed);
  const nlohmann::json* take(const char* name, bool needed, const std::string& expected);

  template <class Choice> void read_choice(const char* name, Choice& value, bool needed) {
    std::string options;
    for (const auto& [choice, text] : Words<Choice>::list) {
      options += (options.empty() ? "\"" : ", \"") + std::string(text) + "\"";
    }
    const nlohmann::json* field = take(name, needed, options);
    if (field == nullptr) {
      return;
    }
    for (const auto& [choice, text] : Words<Choice>::list) {
      if (field->is_string() && field->get_ref<const std::string&>() == text) {
        value = choice;
        return;
      }
    }
    complain("\"" + std::string(name) + "\": " + field->dump(), "one of " + options);
  }

  std::string line_;
  std::string file_;
  int line_number_;
  nlohmann::json object_;
  std::set<std::string> known_;
  scenario::Problems problems_;
};

} // namespace matula::sitting
