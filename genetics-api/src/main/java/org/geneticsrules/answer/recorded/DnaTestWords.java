package org.geneticsrules.answer.recorded;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.geneticsrules.answer.recorded.DnaTest.OfGenotype;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.probability.Probability;

/** Says in two sentences what a DNA test would tell. */
final class DnaTestWords {

    private final DnaTest found;

    DnaTestWords(DnaTest found) {
        this.found = found;
    }

    /** Numbers are left to the table, so that rival models which leave the same open agree. */
    String verdict(boolean contradicted) {
        if (contradicted) {
            return "The records of " + RecordWords.quoted(found.animal())
                    + " and its relatives cannot all be true under this model, so that no report can be weighed by them."
                    + " Re-examine the records named, or the model.";
        }
        return tells() + " " + cause();
    }

    private String tells() {
        String who = RecordWords.quoted(found.animal());
        String test = "A DNA test of " + who + " at " + found.locus();
        List<AllelePair> left = found.before().left();
        if (left.size() < 2) {
            return test + " would tell nothing new: its records leave one genotype only, " + left.get(0) + ".";
        }
        Set<Boolean> carries = new LinkedHashSet<>();
        found.allele()
                .ifPresent(one ->
                        left.forEach(pair -> carries.add(pair.has(one.allele().id()))));
        String subject = carries.size() == 1
                ? "That " + who + (carries.contains(true) ? " carries " : " does not carry ")
                        + found.allele().orElseThrow().words() + " is settled by its records; a DNA test at "
                        + found.locus()
                : test;
        if (isGuess()) {
            return subject + " would tell nothing: it is wrong as often as a guess.";
        }
        String error = "it is wrong in " + found.error() + " of cases";
        if (found.allele().isEmpty()) {
            return found.error().isZero()
                    ? test + " would settle which of " + left.size() + " genotypes it has."
                    : test + " would tell of the " + left.size()
                            + " genotypes that its records leave, but settle nothing by" + " itself, since " + error
                            + ".";
        }
        String allele = found.allele().get().words();
        if (carries.size() == 1) {
            return subject + " would tell only which of " + left.size() + " genotypes it has.";
        }
        return found.error().isZero()
                ? test + " would settle whether it carries " + allele + ", which its records leave open."
                : test + " would tell whether it is likely to carry " + allele
                        + ", but settle nothing by itself, since " + error + ".";
    }

    /**
     * Whether each of the k genotypes is reported equally often, whichever the animal has. Where its sex is not known and the sexes differ in
     * what they may have, there are two such numbers, and a report tells of the sex at least.
     */
    private boolean isGuess() {
        List<OfGenotype> all = found.before().genotypes();
        return all.stream().map(one -> one.pair().alleles().size()).distinct().count() == 1
                && found.error().complement().equals(Probability.of(1, all.size()));
    }

    private String cause() {
        return switch (found.cause()) {
            case ON_RECORD -> "A cause of it in the DNA is on record, so there may be a test without any mating.";
            case ONE_STUDY ->
                "One published study stands behind it; whether it named a variant that can be tested for is to be"
                        + " read there.";
            case NONE_KNOWN ->
                "No variant of it in the DNA is known to this model, and no test of it: all of this would hold"
                        + " only if there were such a test.";
        };
    }
}
