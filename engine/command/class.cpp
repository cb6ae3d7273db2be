#include "engine/command/exit_codes.hpp"
#include "engine/command/verbs.hpp"
#include "engine/records/trouble.hpp"

#include <ostream>

namespace matula::command {
namespace {

struct RunClass {
  std::ostream& out;
  std::ostream& err;

  int operator()(const std::monostate& /*none*/) const { return exit_wrong_call; }
  int operator()(const ClassImport& asked) const { return run_class_import(asked, out, err); }
  int operator()(const ClassList& asked) const { return run_class_list(asked, out, err); }
  int operator()(const ClassSitting& asked) const { return run_class_sitting(asked, out, err); }
  int operator()(const ClassRescore& asked) const { return run_class_rescore(asked, out, err); }
  int operator()(const ClassVersions& asked) const { return run_class_versions(asked, out, err); }
  int operator()(const ClassForget& asked) const { return run_class_forget(asked, out, err); }
  int operator()(const ClassExpire& asked) const { return run_class_expire(asked, out, err); }
  int operator()(const ClassNames& asked) const { return run_class_names(asked, out, err); }
  int operator()(const ClassCheck& asked) const { return run_class_check(asked, out, err); }
  int operator()(const ClassShow& asked) const { return run_class_show(asked, out, err); }
  int operator()(const ClassExport& asked) const { return run_class_export(asked, out, err); }
  int operator()(const ClassBackup& asked) const { return run_class_backup(asked, out, err); }
};

} // namespace

int run_class(const Class& asked, std::ostream& out, std::ostream& err) {
  try {
    return std::visit(RunClass{out, err}, asked.verb);
  } catch (const records::Trouble& trouble) {
    err << trouble.what() << '\n';
    return exit_bad_input;
  }
}

} // namespace matula::command
