#pragma once

#include "engine/command/class_verbs.hpp"

#include <string>
#include <variant>
#include <vector>

namespace matula::command {

/// No verb: opens the bench.
struct OpenBench {
  std::string scenario; ///< Empty: the bench asks.
};
struct Check {
  std::vector<std::string> files;
  bool quick = false; ///< Only read them: no tests are done, no advice is given.
  bool json = false;
};
struct Play {
  std::string scenario;
  std::string steps;
  bool json = false;
};
struct Score {
  std::string sitting;
  bool json = false;
};
struct Picture {
  std::string scenario;
  std::string steps;
  std::string output;
  int width = 1280;
  int height = 800;
};
struct Ladder {
  std::string test;
  std::vector<double> mg_per_dl; ///< Empty: the recipe's own.
  bool csv = false;
};

struct Generate {
  std::string pattern; ///< Key of a pattern, or a file.
  std::string output;  ///< Folder; empty: print.
  int seed = 1;        ///< Of the first variant; the others follow on.
  int count = 1;
  bool typical = false; ///< The pattern's own middle instead.
};

struct Drill {
  std::string skill;
  std::string output; ///< Folder for pictures; empty: none.
  int seed = 1;       ///< Of the first unknown; the others follow on.
  int count = 1;
};
struct Quiz {
  std::string blueprint; ///< Key of a blueprint in assets/quizzes, or a file.
  std::string output;    ///< Folder for pictures; empty: none.
  int seed = 1;
};

struct Progress {
  std::string record;
  bool json = false;
};

/// What an instructor's and a learner's keys are asked.
struct Keys {
  std::string action; ///< "new", "show", "backup", "restore" or "device"
  std::string file;   ///< Of the keys.
  std::string paper;  ///< The backup's text, written or read.
  std::string name;   ///< Of an instructor, in words; of a learner, the pseudonym.
  std::string effort; ///< "light", "everyday" or "heavy"
  std::string passphrase_file;
  bool json = false;
};
struct Seal {
  std::string plan;
  std::string keys;
  std::string cards;
  std::string output;
  std::string sheet; ///< Empty: beside the pack.
  std::string effort;
  std::string passphrase_file; ///< The instructor's.
  bool json = false;
};
struct ShowPack {
  std::string pack;
  bool json = false;
};
struct Sit {
  std::string pack;
  std::string steps;
  std::string device;
  std::string nonce;
  std::string label;
  std::string folder;
  std::string passphrase_file; ///< The class's.
  bool json = false;
};
/// Returned sittings: looked at, or released to the learners.
struct Results {
  std::string folder;
  std::string pack;
  std::string keys;
  std::string cards;
  std::string codes;
  std::string passphrase_file; ///< The instructor's.
  std::string output;          ///< Of a release: folder.
  bool json = false;
};
struct OpenResults : Results {
  std::string store; ///< Class's records to put them into; empty: none.
  std::string label; ///< In the records.
};
struct ReleaseResults : Results {};
struct Feedback {
  std::string sheet;
  std::string device;
  std::string log;
  std::string pack;
  bool json = false;
};
/// Parallel forms of a plan for a class.
struct Forms {
  std::string plan;                  ///< A plan's file.
  std::string output;                ///< Folder to write into.
  std::vector<std::string> students; ///< Numbers or pseudonyms; empty: 01 to count.
  int count = 1;
  int seed = 1;
  bool json = false;
};

/// Prints the JSON Schema of a scenario file.
struct Schema {};

struct Compose {
  std::vector<std::string> wishes; ///< "heat=2+", "sg=1.018"
  std::string from;                ///< Scenario file to begin from; empty: a plain urine.
  std::string output;              ///< Scenario file to write; empty: print only.
  bool json = false;
};

using Verb =
    std::variant<OpenBench, Check, Play, Score, Picture, Ladder, Generate, Drill, Quiz, Progress, Class, Keys,
                 Seal, ShowPack, Sit, OpenResults, ReleaseResults, Feedback, Compose, Schema, Forms>;

/// What the command line asks for, or what to say and exit with instead.
struct Arguments {
  bool proceed = false;
  Verb verb;
  int exit_code = 0; ///< 0 after --help, 2 when the call is wrong.
  std::string out;
  std::string err;
};

[[nodiscard]] Arguments read_arguments(int count, const char* const* words);

} // namespace matula::command
