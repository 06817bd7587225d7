package org.geneticsrules.answer.estimated;

import com.google.common.collect.ImmutableSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.estimation.Estimate;
import org.geneticsrules.estimation.GeneCounting;
import org.geneticsrules.estimation.HardyWeinberg;
import org.geneticsrules.estimation.IntercrossLinkage;
import org.geneticsrules.estimation.LinkageFamily;
import org.geneticsrules.estimation.LodScores;
import org.geneticsrules.estimation.Penetrance;
import org.geneticsrules.estimation.RelativeViability;
import org.geneticsrules.estimation.SegregationRatio;
import org.geneticsrules.estimation.Sibship;
import org.geneticsrules.estimation.TestCross;
import org.geneticsrules.estimation.ThreePointCross;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.statistics.BinomialInterval;
import org.geneticsrules.statistics.Counts;
import org.geneticsrules.statistics.Ratio;

/**
 * Answers what counts that are stated say of a number. But for frequencies by looks no model is asked, so these answers rest on no statement of one.
 *
 * <pre>{@code
 * CountedAnswers.at(0.95).testCross(new TestCross(12, 100)).verdict();
 * // The recombination fraction is about 0.12, and 0.064 to 0.2 goes with the records (19 in 20). ...
 * }</pre>
 *
 * <p>What is asked and how stands in the package's description. Immutable and thread-safe.
 */
public final class CountedAnswers {

    private final double level;

    private CountedAnswers(double level) {
        this.level = level;
    }

    /**
     * Answers with intervals of a level.
     *
     * @param level confidence level, above 0 and below 1, such as 0.95
     * @return the answering service
     * @throws IllegalArgumentException if the level is outside its range
     */
    public static CountedAnswers at(double level) {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException(
                    "a confidence level is above 0 and below 1, such as 0.95, but was " + level);
        }
        return new CountedAnswers(level);
    }

    /**
     * Answers how closely two loci are linked, by the young of a test cross of a parent of known phase.
     *
     * @param cross the counts
     * @return the recombination fraction, with the exact interval too
     */
    public EstimateAnswer testCross(TestCross cross) {
        Draft draft = new Draft("How often do the two loci recombine, by a test cross?");
        draft.given.add(cross.recombinants() + " of " + Words.counted(cross.young(), "young", "young")
                + " are recombinant; the parent's phase is known");
        testCross("the recombination fraction", cross, draft);
        Misfits.recombinants(List.of(new Misfits.Part("", cross)), draft);
        linked(
                List.of(new LinkageFamily(
                        "test cross", cross.recombinants(), cross.young() - cross.recombinants(), true)),
                draft);
        knownPhase(draft);
        equalViability(draft);
        return draft.answer();
    }

    private Estimate testCross(String words, TestCross cross, Draft draft) {
        Estimate profile = cross.profile(level);
        draft.number(words, profile, cross.exact(level));
        draft.fewRecombinants(profile.value() * cross.young());
        return profile;
    }

    private static void knownPhase(Draft draft) {
        draft.assume(
                "phase-known",
                "It is known which alleles lie together on the chromosomes of the parent.",
                "If that is taken the wrong way round, recombinants and the others change places.");
    }

    private static void equalViability(Draft draft) {
        draft.assume(
                "classes-equal",
                "Young of all classes live equally well until they are counted, and are told apart without error.",
                "A class that dies or is misread looks like recombination, or hides it.");
    }

    /** LOD scores, and what they say. */
    private void linked(List<LinkageFamily> families, Draft draft) {
        LodScores scores = LodScores.of(families);
        Map<String, List<String>> open = new LinkedHashMap<>();
        families.stream().filter(one -> !one.phaseKnown()).forEach(one -> open.put(one.name(), List.of()));
        Scores.add(scores, draft.numbers.get(0).estimate(), open, draft);
    }

    /**
     * Answers how closely two loci are linked, by families of which the phase is known or not.
     *
     * @param families at least one family, each with a name of its own
     * @return the recombination fraction with the LOD scores; only families say how they were counted
     * @throws IllegalArgumentException if there is none, or two have one name
     */
    public EstimateAnswer families(List<LinkageFamily> families) {
        Draft draft = new Draft("How often do the two loci recombine, by "
                + Words.counted(families.size(), "family", "families") + "?");
        for (LinkageFamily one : families) {
            draft.given.add(one.name() + ": " + one.recombinants() + " of " + (one.recombinants() + one.others())
                    + " young are recombinant"
                    + (one.phaseKnown() ? "" : " in one of the two phases; the parent's phase is not known"));
        }
        LodScores scores = LodScores.of(families);
        Estimate estimate = scores.estimate(level);
        draft.number(new EstimatedNumber("the recombination fraction", estimate, Optional.empty()));
        known(families).ifPresent(cross -> Misfits.recombinants(List.of(new Misfits.Part("", cross)), draft));
        linked(families, draft);
        draft.few(
                scores.families().size() - scores.uninformative().size(),
                "family that says something",
                "families that say something");
        if (families.stream().anyMatch(LinkageFamily::phaseKnown)) {
            knownPhase(draft);
        }
        if (!families.stream().allMatch(LinkageFamily::phaseKnown)) {
            draft.assume(
                    "phase-half",
                    "Where a parent's phase is not known, both phases are as likely.",
                    "So it is if the parents' parents are strangers to one another and alleles lie together by chance.");
        }
        equalViability(draft);
        return draft.answer();
    }

    /** All young of parents of known phase together. */
    private static Optional<TestCross> known(List<LinkageFamily> families) {
        long recombinants = 0;
        long others = 0;
        for (LinkageFamily one : families) {
            recombinants += one.phaseKnown() ? one.recombinants() : 0;
            others += one.phaseKnown() ? one.others() : 0;
        }
        return recombinants + others == 0
                ? Optional.empty()
                : Optional.of(new TestCross(recombinants, recombinants + others));
    }

    /**
     * Answers how closely two loci are linked, by the young of two double heterozygotes.
     *
     * @param cross the four classes
     * @return the recombination fraction, with the exact interval where there are not too many young for it
     */
    public EstimateAnswer intercross(IntercrossLinkage cross) {
        Draft draft = new Draft("How often do the two loci recombine, by an intercross?");
        List<Long> counts = cross.counts().values();
        draft.given.add("of " + cross.counts().total() + " young: " + counts.get(0) + " with both dominant characters, "
                + counts.get(1) + " with the first only, " + counts.get(2) + " with the second only, " + counts.get(3)
                + " with neither");
        draft.given.add("phase of the parents: "
                + (cross.phase() == IntercrossLinkage.Phase.COUPLING
                        ? "coupling, both recessives on one chromosome"
                        : "repulsion, one recessive on each chromosome"));
        Estimate profile = cross.estimate(level);
        if (cross.counts().total() <= IntercrossLinkage.MOST_EXACT) {
            draft.number("the recombination fraction", profile, cross.exact(level));
            draft.fewRecombinants(2 * profile.value() * cross.counts().total());
        } else {
            draft.number(new EstimatedNumber("the recombination fraction", profile, Optional.empty()));
        }
        cross.productRatio()
                .ifPresent(r -> draft.reckonings.add(new Reckoning(
                        "the same by the ratio of products, which unequal viability of either locus does not shift",
                        r)));
        EstimateTest linkage = EstimateTest.of("the loci are not linked, a fraction of 1/2", cross.linkage());
        draft.tests.add(linkage);
        cross.independence()
                .chiSquared()
                .ifPresent(chi -> draft.tests.add(EstimateTest.of("the classes are as 9:3:3:1", chi)));
        draft.more.add(
                linkage.isRejected()
                        ? draft.numbers.get(0).best().high() >= 0.5
                                ? "By the ratio of likelihoods, that the loci are not linked goes badly with the counts (p "
                                        + Words.p(linkage.p())
                                        + "), though the interval does not rule it out: take linkage as not shown."
                                : "That the loci are not linked goes badly with the counts (p " + Words.p(linkage.p())
                                        + ")."
                        : "The counts do not show that the loci are linked at all (p " + Words.p(linkage.p()) + ").");
        Misfits.intercross(cross, profile, level, draft);
        draft.assume(
                "phase-known",
                "All parents are double heterozygotes of the phase stated.",
                "A parent of the other phase makes recombinants look like the others.");
        draft.assume(
                "sexes-alike",
                "Recombination is as frequent in both sexes.",
                "If it is not, the fraction stands for the mean of both, by their product.");
        equalViability(draft);
        return draft.answer();
    }

    /**
     * Answers how three loci lie to one another, by a test cross.
     *
     * @param cross the four pairs of classes
     * @return the fractions of both intervals and between the outer loci; the coincidence beside them
     */
    public EstimateAnswer threePoint(ThreePointCross cross) {
        Draft draft = new Draft("How often do three loci recombine, by a test cross?");
        draft.given.add("of " + cross.young() + " young: " + cross.parental() + " without a crossover, " + cross.first()
                + " with one in the first interval, " + cross.second() + " in the second, " + cross.both()
                + " in both");
        testCross("the recombination fraction of the first interval", cross.firstInterval(), draft);
        Estimate second = testCross("the recombination fraction of the second interval", cross.secondInterval(), draft);
        testCross("the recombination fraction between the outer loci", cross.outer(), draft);
        Misfits.Part last = new Misfits.Part(" in the second interval", cross.secondInterval());
        List<Misfits.Part> excess = Misfits.recombinants(
                List.of(
                        new Misfits.Part(" in the first interval", cross.firstInterval()),
                        last,
                        new Misfits.Part(" between the outer loci", cross.outer())),
                draft);
        if (!excess.isEmpty() && !excess.get(0).where().equals(" in the first interval")) {
            draft.more.add(Words.verdict(draft.numbers.get(0)));
        }
        if (!excess.contains(last)) {
            draft.more.add("That of the second interval is about " + Words.number(second.value()) + ".");
        }
        cross.coincidence()
                .ifPresent(c -> draft.reckonings.add(new Reckoning(
                        "coincidence: double crossovers as a share of those expected if crossovers were independent",
                        c)));
        if (cross.isOrderDoubtful()) {
            draft.notices.add(
                    "the young with crossovers in both intervals are not the rarest, so the order of the loci is"
                            + " doubtful");
        }
        knownPhase(draft);
        equalViability(draft);
        return draft.answer();
    }

    /** How families came to be counted. */
    public enum Ascertained {
        /** All families of carriers, also those without affected young. */
        COMPLETE,
        /** Every family with at least one affected. */
        AT_LEAST_ONE,
        /** Families were found through affected young who came to notice each by itself. */
        PROBANDS
    }

    /**
     * Answers which share of the young of two carriers is affected.
     *
     * @param families the families
     * @param how how they came to be counted
     * @param chance the chance of an affected animal to come to notice by itself, where it is known; else it is estimated. Counts for probands only
     * @param stated the share that a hypothesis states, such as 1/4; above 0 and below 1
     * @return the share, with the exact interval where all families were counted
     * @throws IllegalArgumentException if there is no family, or they do not go with how they were counted
     */
    public EstimateAnswer segregation(
            List<Sibship> families, Ascertained how, Optional<Probability> chance, Probability stated) {
        Draft draft = new Draft("Which share of the young of two carriers is affected?");
        long young = families.stream()
                .mapToLong(one -> one.siblings() * one.families())
                .sum();
        long affected = families.stream()
                .mapToLong(one -> one.affected() * one.families())
                .sum();
        long number = families.stream().mapToLong(Sibship::families).sum();
        draft.given.add(Words.counted(number, "family", "families") + " of " + young + " young, " + affected
                + " of them affected");
        SegregationRatio asked = switch (how) {
            case COMPLETE -> SegregationRatio.unselected(families);
            case AT_LEAST_ONE -> SegregationRatio.truncated(families);
            case PROBANDS ->
                chance.isPresent()
                        ? SegregationRatio.withProbands(families, chance.get())
                        : SegregationRatio.withProbands(families);
        };
        Estimate estimate = asked.estimate(level);
        String words = "the share of affected young";
        if (how == Ascertained.COMPLETE) {
            draft.number(new EstimatedNumber(
                    words, estimate, Optional.of(BinomialInterval.clopperPearson(affected, young, level))));
        } else {
            draft.number(new EstimatedNumber(words, estimate, Optional.empty()));
            draft.few(number, "family", "families");
        }
        if (how == Ascertained.PROBANDS) {
            long probands = families.stream()
                    .mapToLong(one -> one.probands() * one.families())
                    .sum();
            draft.given.add(probands + " of the affected came to notice by themselves"
                    + chance.map(pi -> ", each with a chance of " + pi).orElse(""));
            if (chance.isEmpty()) {
                draft.number(new EstimatedNumber(
                        "the chance of an affected animal to come to notice by itself",
                        SegregationRatio.probandProbability(families, level),
                        Optional.empty()));
            }
        }
        if (how == Ascertained.AT_LEAST_ONE) {
            SegregationRatio.singlesExcluded(families)
                    .ifPresent(p -> draft.reckonings.add(new Reckoning(
                            "the same, with those left out who are the only affected of their family", p)));
        }
        Ratios.naive(affected, young, how == Ascertained.COMPLETE, draft);
        Ratios.test(asked, stated, draft);
        Ratios.carriers(0, draft);
        draft.assume(
                "ascertainment",
                switch (how) {
                    case COMPLETE -> "All families of carriers were counted, also those without affected young.";
                    case AT_LEAST_ONE ->
                        "Every family with at least one affected was found, however many are affected in it.";
                    case PROBANDS -> "Affected animals came to notice each by itself, all with one chance.";
                },
                "How families came to notice is what the estimate hangs on most; if it was otherwise, ask again so.");
        return draft.answer();
    }

    /**
     * Answers how frequent two alleles are, by animals of all three genotypes.
     *
     * @param animals the counts
     * @return the frequency of each, and whether the genotypes are in Hardy-Weinberg proportions
     */
    public EstimateAnswer genotypes(HardyWeinberg animals) {
        Draft draft = new Draft("How frequent are the two alleles?");
        draft.given.add(animals.first() + " animals with two of the first allele, " + animals.heterozygous()
                + " with one of each, " + animals.second() + " with two of the second");
        long all = animals.first() + animals.heterozygous() + animals.second();
        long first = 2 * animals.first() + animals.heterozygous();
        Frequencies.proportion("the frequency of the first allele", first, 2 * all, level, draft);
        Frequencies.proportion("the frequency of the second allele", 2 * all - first, 2 * all, level, draft);
        Frequencies.test(Optional.of(animals), Optional.empty(), draft);
        Frequencies.assume(draft);
        return draft.answer();
    }

    /**
     * Answers how frequent the alleles of a locus are, by how many animals show each of its expressions.
     *
     * @param answers the model, which says which genotypes show which expression
     * @param locus id of the locus
     * @param counts by expression, how many unrelated animals show it
     * @param asked the allele that is told first; the first of the locus if none
     * @return the frequency of each allele
     * @throws IllegalArgumentException if alleles cannot be counted at the locus, an expression is missing or unknown, or no genotype shows one that was counted
     */
    public EstimateAnswer frequencies(Answers answers, String locus, Counts counts, Optional<String> asked) {
        Model model = answers.compiled().model();
        Draft draft = new Draft("How frequent are the alleles of locus " + locus + "?");
        counts.byClass().forEach((shown, number) -> draft.given.add(number + " animals show " + shown));
        draft.assume(
                "model",
                "Which genotypes show what at the locus is as model " + model + " says.",
                "Where dominance is otherwise, the counts say something else.");
        String pointer = Pointer.of("loci", locus);
        draft.evidence = answers.evidence(
                model.statements().keySet().stream()
                        .filter(one -> one.equals(pointer) || one.startsWith(pointer + "/"))
                        .collect(ImmutableSet.toImmutableSet()),
                List.of());
        draft.model = Optional.of(model.reference());
        draft.cautions = answers.cautions(Situation.of(QuestionKind.CARRIERS.word()));
        Locus at = model.locus(locus);
        Frequencies.add(model, at, GeneCounting.of(at, counts), Optional.empty(), asked, level, draft);
        return draft.answer();
    }

    /**
     * Answers which share of the animals of a genotype shows it, by animals that are known to have it.
     *
     * @param affected how many of them show it
     * @param carriers how many there are, found without regard to whether they show it
     * @return the penetrance, with the exact interval
     * @throws IllegalArgumentException if there are no carriers, or not 0 to as many affected
     */
    public EstimateAnswer penetrance(long affected, long carriers) {
        Draft draft = new Draft("Which share of the animals of the genotype shows it?");
        draft.given.add(affected + " of " + carriers + " animals known to have the genotype show it");
        Estimate found = Penetrance.ofCarriers(affected, carriers, level);
        draft.number(new EstimatedNumber("the penetrance", found, Optional.of(found.interval())));
        draft.assume(
                "found-anyhow",
                "These animals were found without regard to whether they show it, by tests or by their young.",
                "Where those that show it are found more easily, the penetrance is overestimated.");
        return draft.answer();
    }

    /**
     * Answers which share of the animals of a genotype shows it, by young of matings that are known.
     *
     * @param matings at least one mating, of which one can have young of the genotype
     * @return the penetrance
     * @throws IllegalArgumentException if there is none
     */
    public EstimateAnswer penetrance(List<Penetrance.Mating> matings) {
        Draft draft = new Draft("Which share of the animals of the genotype shows it?");
        long affected = 0;
        for (Penetrance.Mating one : matings) {
            draft.given.add(one.affected() + " of " + one.young()
                    + " young show it, each of which has the genotype with the" + " chance " + one.susceptible());
            affected += one.affected();
        }
        draft.number(new EstimatedNumber(
                "the penetrance", Penetrance.ofYoung(matings).estimate(level), Optional.empty()));
        draft.few(affected, "affected young", "affected young");
        Misfits.penetrance(matings, draft);
        draft.assume(
                "found-anyhow",
                "Matings were chosen without regard to whether their young show it.",
                "Of litters that were noticed because of young that show it the penetrance is overestimated.");
        draft.assume(
                "no-other-cause",
                "Animals of other genotypes never show it, and the young of a mating are independent.",
                "If others show it too, for another cause, the penetrance is overestimated.");
        return draft.answer();
    }

    /**
     * Answers how well animals of some genotypes live until they are counted, compared with the others.
     *
     * @param counts the classes as counted
     * @param conceived the share of each class among all that are conceived
     * @param concerned for each class, the share of all conceived that is of the class and of the genotypes in question
     * @return the relative viability
     * @throws IllegalArgumentException as {@link RelativeViability#of} does
     */
    public EstimateAnswer viability(Counts counts, Ratio conceived, List<Probability> concerned) {
        Draft draft = new Draft("How well do animals of the genotype live, compared with the others?");
        RelativeViability asked = RelativeViability.of(counts, conceived, concerned);
        for (int c = 0; c < counts.values().size(); c++) {
            draft.given.add(
                    "class " + counts.names().get(c) + ": " + counts.values().get(c) + " counted; "
                            + conceived.shares().get(c) + " of all conceived, of which the genotypes in question are "
                            + concerned.get(c) + " of all");
        }
        draft.number(new EstimatedNumber("the relative viability", asked.estimate(level), Optional.empty()));
        draft.tests.add(EstimateTest.of("they live as well as the others", asked.equal()));
        EstimateTest lethal = EstimateTest.of("none of them live", asked.lethal());
        draft.tests.add(lethal);
        draft.more.add(
                lethal.isRejected()
                        ? "That none of them live goes badly with the counts (p " + Words.p(lethal.p()) + ")."
                        : "That none of them live goes with the counts (p " + Words.p(lethal.p()) + ").");
        draft.assume(
                "ratio-conceived",
                "The ratio among all that are conceived is as stated, and classes are told apart without error.",
                "A class that is mistaken for another, or a penetrance below 1, looks like a loss.");
        return draft.answer();
    }
}
