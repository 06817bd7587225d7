package org.geneticsrules.answer.estimated;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.geneticsrules.estimation.Estimate;
import org.geneticsrules.estimation.IntercrossLinkage;
import org.geneticsrules.estimation.Penetrance;
import org.geneticsrules.estimation.TestCross;
import org.geneticsrules.statistics.BinomialTail;

/** Counts that go badly with every value of a number: then the verdict says so before any value is told. */
final class Misfits {

    /** The other phase is told of from here on: counts that are so many times as likely in it. */
    private static final double FAR_LIKELIER = 10;

    private Misfits() {}

    /** Young of a cross of two loci, and where they are: empty, or {@code  in the first interval}. */
    record Part(String where, TestCross cross) {}

    /** More recombinants than loci have that are not linked at all. Tells which parts have too many; the headline is then on them. */
    static List<Part> recombinants(List<Part> parts, Draft draft) {
        List<Part> excess = new ArrayList<>();
        List<String> sentences = new ArrayList<>();
        for (Part part : parts) {
            TestCross cross = part.cross();
            EstimateTest half = EstimateTest.exact(
                    "no more than half of the young recombine" + part.where(),
                    "exact, of so many or more",
                    BinomialTail.atLeast(cross.recombinants(), cross.young(), 0.5));
            if (half.isRejected()) {
                excess.add(part);
                draft.tests.add(half);
                sentences.add(cross.recombinants() + " of " + cross.young() + " young are recombinant" + part.where()
                        + ", more than half, which goes badly with every recombination fraction (p " + Words.p(half.p())
                        + ").");
            }
        }
        if (!excess.isEmpty()) {
            draft.headline = String.join(" ", sentences)
                    + " If this is no chance, either the phase, or which classes are recombinant, was taken the wrong way round, or classes are"
                    + " misread or lost: find out which before any value is used.";
        }
        return excess;
    }

    /** Single loci that are not 3:1, which linkage does not shift, and a phase in which the counts are far likelier. */
    static void intercross(IntercrossLinkage cross, Estimate estimate, double level, Draft draft) {
        List<Long> counts = cross.counts().values();
        List<String> off = new ArrayList<>();
        single("first", counts.get(2) + counts.get(3), cross, draft, off);
        single("second", counts.get(1) + counts.get(3), cross, draft, off);
        if (!off.isEmpty()) {
            draft.more.add(Words.capital(String.join(", and ", off))
                    + "; linkage does not change that: classes may be lost or misread, or the parents are not what they"
                    + " are taken for.");
        }
        boolean coupling = cross.phase() == IntercrossLinkage.Phase.COUPLING;
        String other = coupling ? "repulsion" : "coupling";
        Estimate otherwise = new IntercrossLinkage(
                        cross.counts(), coupling ? IntercrossLinkage.Phase.REPULSION : IntercrossLinkage.Phase.COUPLING)
                .estimate(level);
        double more = otherwise.logLikelihood() - estimate.logLikelihood();
        if (more >= Math.log(FAR_LIKELIER)) {
            double times = Math.exp(more);
            draft.headline = "The other phase goes far better with these counts: in " + other + " they are "
                    + (times < 1000 ? "about " + Math.round(times) : "more than 1000")
                    + " times as likely, at a recombination fraction of about " + Words.number(otherwise.value())
                    + ". So the phase may have been taken the wrong way round: see to that before any value is used."
                    + " What follows is as if it were "
                    + (coupling ? "coupling" : "repulsion") + " all the same. "
                    + Words.verdict(draft.numbers.get(0));
            draft.notices.add("in " + other + " the recombination fraction is about " + Words.number(otherwise.value())
                    + ", " + Words.range(otherwise.interval())
                    + " by profile likelihood, and the counts are 10 to the power of "
                    + String.format(Locale.ROOT, "%.1f", more / Math.log(10))
                    + " times as likely as in the phase stated");
        }
    }

    private static void single(String which, long recessive, IntercrossLinkage cross, Draft draft, List<String> off) {
        EstimateTest test = EstimateTest.exact(
                "the " + which + " character by itself is 3:1",
                "exact, twice the smaller tail",
                BinomialTail.twoSided(recessive, cross.counts().total(), 0.25));
        if (test.isRejected()) {
            draft.tests.add(test);
            off.add("the " + which + " character by itself goes badly with 3:1 (p " + Words.p(test.p()) + ")");
        }
    }

    /** Matings with more that show it than can have the genotype, and matings that do not go with one penetrance. */
    static void penetrance(List<Penetrance.Mating> matings, Draft draft) {
        List<String> sentences = new ArrayList<>();
        for (Penetrance.Mating one : matings) {
            // one of several is sooner beyond what is usual
            double p = Math.min(1, matings.size() * one.excess());
            EstimateTest test = EstimateTest.exact(
                    "no more than " + one.susceptible() + " of the young show it where " + one.affected() + " of "
                            + one.young() + " do",
                    matings.size() > 1 ? "exact, times the number of matings" : "exact",
                    p);
            if (test.isRejected()) {
                draft.tests.add(test);
                sentences.add(one.affected() + " of " + one.young()
                        + " young show it, though each has the genotype with the chance " + one.susceptible()
                        + ": so many are rare even if all of the genotype show it (p " + Words.p(p) + ").");
            }
        }
        if (!sentences.isEmpty()) {
            draft.headline = String.join(" ", sentences)
                    + " These counts go badly with every penetrance: the chance stated may be wrong, others may show it too,"
                    + " or these young may have been chosen for it.";
        }
        Penetrance.ofYoung(matings).fit().ifPresent(fit -> {
            EstimateTest test = EstimateTest.of("all matings go with one penetrance", fit);
            draft.tests.add(test);
            if (!sentences.isEmpty()) {
                return; // why they do not is said
            }
            draft.more.add(
                    test.isRejected()
                            ? "That all matings go with one penetrance, by the chances stated, goes badly with the counts (p "
                                    + Words.p(test.p()) + "): do not take the estimate for that of any of them."
                            : "The matings go with one penetrance (p " + Words.p(test.p()) + ").");
        });
    }
}
