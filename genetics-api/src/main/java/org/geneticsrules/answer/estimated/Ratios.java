package org.geneticsrules.answer.estimated;

import org.geneticsrules.estimation.SegregationRatio;
import org.geneticsrules.probability.Probability;

/** What answers about a share of affected young have in common. */
final class Ratios {

    private Ratios() {}

    static void naive(long affected, long young, boolean complete, Draft draft) {
        draft.reckonings.add(new Reckoning(
                complete
                        ? "share among all that were counted"
                        : "share among all that were counted, which is too high where families were noticed for it",
                affected / (double) young));
    }

    static void test(SegregationRatio asked, Probability stated, Draft draft) {
        EstimateTest test = EstimateTest.of(stated + " of the young are affected", asked.test(stated));
        draft.tests.add(test);
        draft.more.add(
                test.isRejected()
                        ? "A share of " + stated + " goes badly with them (p " + Words.p(test.p()) + ")."
                        : "A share of " + stated + " goes with them (p " + Words.p(test.p())
                                + "), which does not prove it.");
    }

    static void carriers(int parentsShowing, Draft draft) {
        draft.assume(
                "carriers",
                (parentsShowing == 0
                                ? "Both parents of each family are carriers for certain"
                                : parentsShowing == 1
                                        ? "The parent that does not show it is a carrier, if it is recessive; the parent that"
                                                + " shows it has it once, if it is dominant"
                                        : "Both parents of each family have it as often as the share that is tested takes them to")
                        + "; families are independent, and how many young there are has nothing to do with the condition.",
                parentsShowing == 0
                        ? "Parents who are no carriers have no affected young, and make the share look smaller."
                        : "Families of other parents have another share, and shift this one.");
    }
}
