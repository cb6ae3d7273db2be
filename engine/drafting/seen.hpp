#pragma once

#include "sim/appearance/appearance.hpp"
#include "sim/bench/scene.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace matula::drafting {

/// A test of the case done by the book, as the author sees it.
struct SeenTest {
  std::string test;
  std::string title;
  std::string word; ///< "2+", or a figure with its unit; empty while it is being done for the first time.
  std::string seen; ///< In the trade's words.
  std::string line; ///< How far from the next word; empty for figures.
  std::string note; ///< Why it could not be done, or that a bottle was taken which is not out.
  bool near_line = false; ///< Too near for learners to agree.
  bool fresh = false;     ///< Of the specimen as it is now; else of the one before.
  unsigned version = 0;   ///< Of the draft it was done for: tells when its tube must be drawn anew.
};

/// What there is to earn in a ledger.
struct SeenWorth {
  std::string ledger; ///< "Reading"
  int marks = 0;
  std::vector<std::string> parts; ///< "Colour 5"; the same ones together: "Grade of ... 20"
};

/// The bench beside the form.
struct Seen {
  std::vector<std::pair<std::string, std::string>> figures; ///< "Density 20/20", "1.0183"
  bool figures_fresh = false;
  std::vector<std::string> warnings; ///< What no patient passes.
  std::vector<std::string> advice;   ///< What to look at again; empty until every test is done.
  std::vector<SeenTest> tests;
  std::optional<SeenTest> floating; ///< The case's own float in a jar, where the gravity is asked for.
  std::vector<SeenWorth> worth;     ///< Of every ledger but safety.
  bool done = false;                ///< All of it is of the draft as it stands.
  std::string trouble;              ///< Why the specimen cannot be made; else empty.
};

/// What a test looks like under one card: a vessel, with a float in it or without, or a pad with its row of
/// the card.
struct Looks {
  std::optional<appearance::Appearance> vessel;
  std::optional<bench::SeenFloat> floating;
  std::optional<bench::SeenPad> pad;
  bench::SeenCardRow row; ///< Of the pad; without fields for a paper without a card.
};

/// "Make it look like this", found and not yet taken.
struct Proposal {
  struct Line {
    std::string label; ///< "albumin"
    std::string from;  ///< "130 mg/dL"; empty when it is new.
    std::string to;    ///< Empty when it is taken out.
  };
  std::vector<Line> lines;
  std::vector<std::string> shows; ///< What it then looks like, a line each.
  std::vector<std::string> warnings;
};

} // namespace matula::drafting
