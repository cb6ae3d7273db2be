#pragma once

// The same equations solved by SUNDIALS CVODE (backward differentiation, dense Newton), for comparison only.
#include "sim/ageing/system.hpp"

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include <stdexcept>
#include <vector>

namespace matula::test {

inline int cvode_change(sunrealtype, N_Vector y, N_Vector change, void* system) {
  static_cast<ageing::System*>(system)->change(N_VGetArrayPointer(y), N_VGetArrayPointer(change));
  return 0;
}

/// The state after `hours` with CVODE's own difference quotients; throws when it gives up.
inline std::vector<double> by_cvode(ageing::System& system, double hours, double relative, double absolute) {
  SUNContext context = nullptr;
  SUNContext_Create(nullptr, &context);
  const auto n = static_cast<sunindextype>(system.size());
  N_Vector y = N_VNew_Serial(n, context);
  for (sunindextype i = 0; i < n; ++i) {
    N_VGetArrayPointer(y)[i] = system.start()[static_cast<std::size_t>(i)];
  }
  void* solver = CVodeCreate(CV_BDF, context);
  SUNMatrix matrix = SUNDenseMatrix(n, n, context);
  SUNLinearSolver linear = SUNLinSol_Dense(y, matrix, context);
  CVodeInit(solver, cvode_change, 0.0, y);
  CVodeSStolerances(solver, relative, absolute);
  CVodeSetUserData(solver, &system);
  CVodeSetLinearSolver(solver, linear, matrix);
  CVodeSetMaxNumSteps(solver, 1000000);
  CVodeSetStopTime(solver, hours);
  sunrealtype reached = 0;
  const int said = CVode(solver, hours, y, &reached, CV_NORMAL);
  std::vector<double> end(N_VGetArrayPointer(y), N_VGetArrayPointer(y) + n);
  SUNLinSolFree(linear);
  SUNMatDestroy(matrix);
  CVodeFree(&solver);
  N_VDestroy(y);
  SUNContext_Free(&context);
  if (said < 0) {
    throw std::runtime_error("CVODE gave up");
  }
  return end;
}

} // namespace matula::test
