#include "engine/learner/line.hpp"

#include <cmath>

namespace matula::learner {

namespace {

const std::vector<std::string>& occasions() {
  static const std::vector<std::string> words{"sitting", "drill", "quiz"};
  return words;
}

void whole(const char* key, double value, std::vector<sitting::Wrong>& wrongs) {
  if (value != std::floor(value)) {
    wrongs.push_back({"\"" + std::string(key) + "\" with a fraction", "a whole number"});
  }
}

/// Reads and writes the fields every answer has.
template <class F> void fields(F& f, Answer& answer, double& when_s, double& credit) {
  constexpr double latest_s = 253402300799; // End of the year 9999.
  constexpr double hardest = 20;
  constexpr double full = 1000;
  f.number("when_s", when_s, 0, latest_s, true);
  f.choice("from", answer.from, occasions(), true);
  f.name("skill", answer.skill);
  f.name("test", answer.test, false);
  f.name("unknown", answer.unknown);
  f.number("difficulty", answer.difficulty, -hardest, hardest, true);
  f.number("credit", credit, 0, full, true);
  f.name("written", answer.written);
  f.name("expected", answer.expected);
  f.name("fault", answer.fault, false);
}

Answer read_answer(const nlohmann::json& object, std::vector<sitting::Wrong>& wrongs) {
  constexpr double farthest = 100;
  constexpr double most_words = 99;
  sitting::FieldReader reader(object, wrongs);
  Answer answer;
  double when_s = 0;
  double credit = 0;
  double intensity = 0;
  double grade = 0;
  fields(reader, answer, when_s, credit);
  reader.number("intensity", intensity, -farthest, farthest);
  reader.number("grade", grade, 0, most_words);
  reader.finish();
  whole("when_s", when_s, wrongs);
  whole("credit", credit, wrongs);
  whole("grade", grade, wrongs);
  answer.when_s = static_cast<std::int64_t>(when_s);
  answer.credit = static_cast<int>(credit);
  if (object.contains("intensity")) {
    answer.intensity = intensity;
  }
  if (object.contains("grade")) {
    answer.grade = static_cast<int>(grade);
  }
  return answer;
}

std::string dump(const nlohmann::ordered_json& object) {
  return object.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
}

} // namespace

Line read_line(std::string_view text) {
  Line line;
  const nlohmann::json object = nlohmann::json::parse(text, nullptr, false);
  if (object.is_discarded() || !object.is_object()) {
    line.wrongs.push_back({"a line that is not a JSON object",
                           R"(one answer a line: {"when_s": 1767225600, "from": "drill", ...})"});
    return line;
  }
  if (object.contains(header_key)) {
    double format = record_format;
    sitting::FieldReader reader(object, line.wrongs);
    reader.number(header_key, format, record_format, record_format, true);
    reader.finish();
    line.kind = line.wrongs.empty() ? LineKind::Header : LineKind::OtherHeader;
    return line;
  }
  if (object.contains(cut_off_key)) {
    line.kind = LineKind::CutOff;
    return line;
  }
  line.answer = read_answer(object, line.wrongs);
  line.kind = line.wrongs.empty() ? LineKind::Answer : LineKind::Wrong;
  return line;
}

std::string to_line(const Answer& answer) {
  nlohmann::ordered_json object;
  sitting::FieldWriter writer(object);
  Answer copy = answer;
  auto when_s = static_cast<double>(answer.when_s);
  auto credit = static_cast<double>(answer.credit);
  fields(writer, copy, when_s, credit);
  object["when_s"] = answer.when_s; // Without the decimal point of a measured number.
  object["credit"] = answer.credit;
  if (answer.intensity) {
    object["intensity"] = *answer.intensity;
  }
  if (answer.grade) {
    object["grade"] = *answer.grade;
  }
  return dump(object);
}

std::string header_line() {
  return dump({{header_key, record_format}});
}

std::string cut_off_line() {
  return dump({{cut_off_key, "the line above"}});
}

} // namespace matula::learner
