#include "engine/sitting/field_reader.hpp"

#include <fmt/format.h>

#include <cmath>

namespace matula::sitting {

FieldReader::FieldReader(std::string_view line, std::string file, int line_number)
    : line_(line), file_(std::move(file)), line_number_(line_number),
      object_(nlohmann::json::parse(line, nullptr, false)) {
  if (object_.is_discarded()) {
    complain("a line that is not JSON",
             "one JSON object, such as {\"t\": 12.5, \"do\": \"smell\", \"vessel\": \"specimen\"}");
    object_ = nlohmann::json::object();
  } else if (!object_.is_object()) {
    complain("a JSON " + std::string(object_.type_name()), "a JSON object in braces");
    object_ = nlohmann::json::object();
  }
}

void FieldReader::complain(const std::string& found, const std::string& expected) {
  problems_.push_back({file_, line_number_, 0, line_, found, expected});
}

const nlohmann::json* FieldReader::take(const char* name, bool needed, const std::string& expected) {
  known_.insert(name);
  const auto field = object_.find(name);
  if (field != object_.end()) {
    return &*field;
  }
  // A line that could not be read at all has been complained of once already.
  if (needed && problems_.empty()) {
    complain("no \"" + std::string(name) + "\"", expected);
  }
  return nullptr;
}

void FieldReader::read_text(const char* name, std::string& value, bool needed) {
  const nlohmann::json* field = take(name, needed, "a text in quotes");
  if (field == nullptr) {
    return;
  }
  if (!field->is_string()) {
    complain("\"" + std::string(name) + "\": " + field->dump(), "a text in quotes");
    return;
  }
  value = field->get<std::string>();
}

void FieldReader::read_number(const char* name, double& value, double least, double most, bool needed) {
  const std::string range = fmt::format("a number from {:g} to {:g}", least, most);
  const nlohmann::json* field = take(name, needed, range);
  if (field == nullptr) {
    return;
  }
  const double number = field->is_number() ? field->get<double>() : std::nan("");
  if (!(number >= least && number <= most)) {
    complain("\"" + std::string(name) + "\": " + field->dump(), range);
    return;
  }
  value = number;
}

void FieldReader::may(const char* name, bool& value) {
  const nlohmann::json* field = take(name, false, "");
  if (field == nullptr) {
    return;
  }
  if (!field->is_boolean()) {
    complain("\"" + std::string(name) + "\": " + field->dump(), "true or false");
    return;
  }
  value = field->get<bool>();
}

void FieldReader::refuse_unknown() {
  for (const auto& [name, value] : object_.items()) {
    if (known_.count(name) == 0) {
      std::string names;
      for (const std::string& known : known_) {
        names += (names.empty() ? "\"" : ", \"") + known + "\"";
      }
      complain("the unknown field \"" + name + "\"", "only the fields " + names);
    }
  }
}

} // namespace matula::sitting
