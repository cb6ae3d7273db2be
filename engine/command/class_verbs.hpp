#pragma once

#include <iosfwd>
#include <string>
#include <variant>
#include <vector>

namespace CLI {
class App;
}

namespace matula::command {

/// What every verb of a class's records is about.
struct ClassScope {
  std::string store = "class.db"; ///< A file, or postgresql://...
  std::string exercise;
  std::string label;
  std::string pseudonym;
  bool json = false;
};

struct ClassImport : ClassScope {
  std::string folder;
  std::vector<std::string> scenarios; ///< Folders.
  std::string keep_until;
  int threads = 2;
};
struct ClassList : ClassScope {
  bool all_scores = false;
};
struct ClassSitting : ClassScope {
  long long number = 0;
  std::string output; ///< Folder for the log and its scenario; empty: print the marks.
};
struct ClassRescore : ClassScope {
  std::string scenario; ///< File; empty: each sitting's own.
  int threads = 2;
  bool on_trial = false; ///< Nothing is stored.
};
struct ClassVersions : ClassScope {
  int choose = 0; ///< Number in the list; 0: print them.
};
struct ClassForget : ClassScope {
  std::string who;
};
struct ClassExpire : ClassScope {
  std::string today; ///< Empty: what the clock says.
};
struct ClassNames : ClassScope {
  std::string file; ///< CSV of pseudonym and name; empty: print them.
};
struct ClassBackup : ClassScope {
  std::string file;
};

struct ClassCheck : ClassScope {};
struct ClassShow : ClassScope {};
struct ClassExport : ClassScope {
  std::string what;   ///< "sittings", "marks", "items", "confusion", "xapi", "fhir", "report"
  std::string output; ///< A file; a folder for "fhir".
  std::string home;   ///< Of the actors in xAPI.
  std::string title;
  bool for_students = false;
  bool names = false;
};

/// Work on a class's records.
using ClassVerb =
    std::variant<std::monostate, ClassImport, ClassList, ClassSitting, ClassRescore, ClassVersions,
                 ClassForget, ClassExpire, ClassNames, ClassBackup, ClassCheck, ClassShow, ClassExport>;
struct Class {
  ClassVerb verb;
};

/// Adds the verb "class" and its own verbs; the one called is in `chosen` afterwards.
void add_class(CLI::App& app, Class& chosen);

int run_class_import(const ClassImport& asked, std::ostream& out, std::ostream& err);
int run_class_list(const ClassList& asked, std::ostream& out, std::ostream& err);
int run_class_sitting(const ClassSitting& asked, std::ostream& out, std::ostream& err);
int run_class_rescore(const ClassRescore& asked, std::ostream& out, std::ostream& err);
int run_class_versions(const ClassVersions& asked, std::ostream& out, std::ostream& err);
int run_class_forget(const ClassForget& asked, std::ostream& out, std::ostream& err);
int run_class_expire(const ClassExpire& asked, std::ostream& out, std::ostream& err);
int run_class_names(const ClassNames& asked, std::ostream& out, std::ostream& err);
int run_class_show(const ClassShow& asked, std::ostream& out, std::ostream& err);
int run_class_export(const ClassExport& asked, std::ostream& out, std::ostream& err);
int run_class_check(const ClassCheck& asked, std::ostream& out, std::ostream& err);
int run_class_backup(const ClassBackup& asked, std::ostream& out, std::ostream& err);

} // namespace matula::command
