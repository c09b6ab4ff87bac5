// A failing property ends at its first counterexample: a mutant needs one, not the smallest.
import fc from 'fast-check';

fc.configureGlobal({ endOnFailure: true });
