#pragma once

#include "engine/command/arguments.hpp"

#include <optional>
#include <string>

namespace CLI {
class App;
}

namespace matula::command {

/// Options of the verbs for examinations.
struct ExamChoices {
  Keys keys;
  Seal seal;
  ShowPack pack;
  Sit sit;
  OpenResults open_results;
  ReleaseResults release;
  Feedback feedback;
};

void add_exam_verbs(CLI::App& app, ExamChoices& choices, const std::string& footer);

/// The one that was called; nothing when it was another verb.
[[nodiscard]] std::optional<Verb> chosen_exam_verb(const CLI::App& app, const ExamChoices& choices);

} // namespace matula::command
