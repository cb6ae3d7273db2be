#include "engine/scenario/unwritten.hpp"

#include <algorithm>

namespace matula::scenario {

std::vector<std::string> unwritten(const Brief& brief, const std::map<std::string, std::string>& worksheet) {
  std::vector<std::string> missing;
  const auto want = [&](const std::string& item, const std::string& words) {
    const auto found = worksheet.find(item);
    if (found == worksheet.end() || found->second.empty()) {
      missing.push_back(words);
    }
  };
  if (brief.reception) {
    want("reception", "what you do with the specimen");
    const auto verdict = worksheet.find("reception");
    if (verdict != worksheet.end() && verdict->second == "refuse") {
      return missing;
    }
  }
  if (brief.asks_look) {
    want("colour", "colour");
    want("clarity", "clarity");
    want("odour", "odour");
  }
  if (brief.asks_gravity) {
    want("sg.zero", "the float in water");
    want("sg.temperature", "temperature of the specimen");
    want("sg.reading", "the float in the specimen");
    const auto step = [&](const char* key) { return worksheet.count(std::string("sg.step.") + key) > 0; };
    if (!step("zero") && !step("temperature") && !step("protein") && !step("glucose")) {
      missing.emplace_back("the steps of the specific gravity");
    }
    want("sg.corrected", "specific gravity reported");
  }
  for (const AskedTest& test : brief.tests) {
    const bool sheet_missing = std::any_of(test.curve.begin(), test.curve.end(), [&](const AskedLine& line) {
      return worksheet.count(line.item) == 0;
    });
    if (sheet_missing) {
      missing.push_back(test.title);
    } else if (test.curve.empty()) {
      want(test.item, test.title);
    }
  }
  for (const Question& question : brief.questions) {
    want("decision." + question.key, "\"" + question.prompt + "\"");
  }
  return missing;
}

} // namespace matula::scenario
