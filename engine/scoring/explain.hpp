#pragma once

#include "engine/scoring/facts.hpp"
#include "engine/scoring/rulebook.hpp"

#include <string>

namespace matula::scoring {

/// What a learner calls the thing a test is read on, from its purpose: "your heat and acetic acid test tube",
/// "your protein pad".
[[nodiscard]] std::string own_tube(const TestRule& test);

/// With a capital first letter, for the beginning of a sentence.
[[nodiscard]] std::string capital(std::string text);

/// "45 s", "1 min 35 s", "10 min".
[[nodiscard]] std::string say_time(double seconds);

/// A number with no more digits than a person would say: "0.45", "5", "3.2".
[[nodiscard]] std::string say_number(double value);

/// "1.023"
[[nodiscard]] std::string say_gravity(double relative_density);

/// "+0.002", "-0.001", "0"
[[nodiscard]] std::string say_correction(double correction);

/// Fills a rule's sentence: {found}, {min}, {max}, any fact by name, and each with "_time" for minutes and
/// seconds.
[[nodiscard]] std::string fill(const std::string& sentence, const Rule& rule, const Facts& facts);

/// The first placeholder of a sentence that names nothing; empty when all are known.
[[nodiscard]] std::string unknown_placeholder(const std::string& sentence);

} // namespace matula::scoring
