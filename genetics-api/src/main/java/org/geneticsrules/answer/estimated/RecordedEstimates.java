package org.geneticsrules.answer.estimated;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.geneticsrules.answer.recorded.RecordBasis;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.estimation.Estimate;
import org.geneticsrules.estimation.RecordedFamilies;
import org.geneticsrules.estimation.RecordedFamily;
import org.geneticsrules.estimation.SegregationRatio;
import org.geneticsrules.estimation.UnrelatedAnimals;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.statistics.BinomialInterval;
import org.geneticsrules.trait.Phenotype;

/**
 * Answers what recorded animals say of a number.
 *
 * <pre>{@code
 * RecordedEstimates kennel = RecordedEstimates.of(RecordedAnswers.of(answers, records), 0.95);
 * kennel.segregation(new RecordedFamilies.Which(Phenotype.of("eye colour", "pink"), 0, Set.of(), false), Probability.of(1, 4));
 * kennel.frequencies("C", List.of(), Optional.of("c"));
 * }</pre>
 *
 * <p>What is asked and how stands in the package's description. Immutable and thread-safe.
 */
public final class RecordedEstimates {

    /** More litters or animals than these are told by their number. */
    private static final int MOST_NAMED = 5;

    private final RecordedAnswers recorded;
    private final double level;

    private RecordedEstimates(RecordedAnswers recorded, double level) {
        this.recorded = recorded;
        this.level = level;
    }

    /**
     * Answers about the animals of a pedigree.
     *
     * @param recorded the model, its cautions, the records, and what is assumed of founders and naming errors
     * @param level confidence level of the intervals, above 0 and below 1
     * @return the answering service
     * @throws IllegalArgumentException if the level is outside its range
     */
    public static RecordedEstimates of(RecordedAnswers recorded, double level) {
        CountedAnswers.at(level); // refuses a level outside its range
        return new RecordedEstimates(recorded, level);
    }

    /**
     * Answers any one number of the model by the chance of all records: a recombination fraction, a penetrance, a chance to live.
     *
     * @param number the number
     * @return the estimate; LOD scores too if it is a recombination fraction
     * @throws ProblemsException if the model has no such number, founders lack frequencies, or the records contradict the model whatever the
     *     number is
     * @throws org.geneticsrules.problem.TooLargeException if the chance of the records cannot be calculated exactly
     */
    public EstimateAnswer ofModel(ModelNumber number) {
        return new ModelEstimate(recorded, number, level).answer();
    }

    /**
     * Answers which share of the young of two carriers, or of parents that show it, shows a look, by the litters of the pedigree and how they came to be recorded.
     *
     * @param which which litters are asked about
     * @param stated the share that a hypothesis states, such as 1/4; above 0 and below 1
     * @return the share, with the exact interval where all litters count in full
     * @throws ProblemsException if there is no such litter, or none counts
     */
    public EstimateAnswer segregation(RecordedFamilies.Which which, Probability stated) {
        Pedigree pedigree = recorded.pedigree();
        List<Problem> unknown = new ArrayList<>();
        which.litters().stream()
                .filter(id -> !pedigree.litters().containsKey(id))
                .forEach(id -> unknown.add(Problems.unknown(
                        Stage.REFERENCES,
                        "unknown-litter",
                        "",
                        "litter",
                        id,
                        pedigree.litters().keySet())));
        if (!unknown.isEmpty()) {
            throw new ProblemsException(unknown);
        }
        RecordedFamilies found = RecordedFamilies.of(pedigree, which);
        Map<String, List<String>> reasons = new TreeMap<>();
        found.leftOut()
                .forEach((id, why) ->
                        reasons.computeIfAbsent(why, key -> new ArrayList<>()).add(id));
        if (found.families().isEmpty()) {
            throw new ProblemsException(
                    Problem.of(
                                    Stage.MEANING,
                                    "no-family",
                                    "",
                                    "no litter says which " + asked(which)
                                            + (reasons.isEmpty() ? "" : ": " + reasons(reasons)))
                            .expecting(
                                    "litters of two known parents, of whom it is recorded whether they show it, with young that do"));
        }
        Draft draft = new Draft("Which " + asked(which) + "?");
        long young = 0;
        long affected = 0;
        boolean complete = true;
        for (RecordedFamily one : found.families()) {
            young += one.siblings();
            affected += one.affected();
            complete &= one.how() instanceof Ascertainment.Complete || one.how() instanceof Ascertainment.ParentsChosen;
            draft.given.add("litter " + one.name() + ": " + one.affected() + " of " + one.siblings() + " show it, "
                    + how(one.how(), which.carriers()));
        }
        SegregationRatio asked = SegregationRatio.asRecorded(found.families());
        Estimate estimate = asked.estimate(level);
        draft.number(new EstimatedNumber(
                "the share of the young that shows " + shown(which.look()),
                estimate,
                complete ? Optional.of(BinomialInterval.clopperPearson(affected, young, level)) : Optional.empty()));
        if (!complete) {
            draft.few(found.families().size(), "family", "families");
        }
        Ratios.naive(affected, young, complete, draft);
        Ratios.test(asked, stated, draft);
        Ratios.carriers(which.parentsShowing(), draft);
        draft.assume(
                "ascertainment",
                "Litters came to be recorded as is said of each; the litters of a couple who are known to be carriers by nothing"
                        + " else count together, as a family that was noticed for one of its young.",
                "How families came to notice is what the estimate hangs on most.");
        if (!found.unstated().isEmpty()) {
            draft.assume(
                    "litters-complete",
                    "The litters of which nobody wrote down why they are recorded (" + named(found.unstated())
                            + ") would have been recorded whatever they showed.",
                    "Say of each how it came to be recorded; if they were noticed for this look, more shows it in them than in"
                            + " others.");
        }
        reasons.forEach((why, ids) -> draft.notices.add(
                "left out: " + (ids.size() == 1 ? "litter " : "litters ") + named(ids) + ", since " + why));
        if (!found.unclear().isEmpty()) {
            draft.notices.add("not counted: " + named(found.unclear())
                    + ", of whom it is not recorded whether they show it; if those that show it are the ones to be written down,"
                    + " the share is overestimated");
        }
        if (!recorded.confusions().all().isEmpty()) {
            draft.notices.add("errors of naming are not reckoned with here");
        }
        records(draft, QuestionKind.LITTER);
        return draft.answer();
    }

    private static String asked(RecordedFamilies.Which which) {
        String look = shown(which.look());
        return switch (which.parentsShowing()) {
            case 0 -> "share of the young of two carriers shows " + look;
            case 1 -> "share of the young shows " + look + ", where one parent does";
            default -> "share of the young shows " + look + ", where both parents do";
        };
    }

    /** A look as a sentence has it: {@code eye colour pink}. */
    private static String shown(Phenotype look) {
        return look.asMap().entrySet().stream()
                .map(one -> one.getKey() + " " + one.getValue())
                .collect(Collectors.joining(" and "));
    }

    private static String how(Ascertainment how, boolean carriers) {
        return how instanceof Ascertainment.Complete
                ? carriers ? "recorded whatever it shows, its parents known carriers" : "recorded whatever it shows"
                : how instanceof Ascertainment.AtLeastOne
                        ? "noticed for at least one"
                        : how instanceof Ascertainment.ParentsChosen
                                ? "its parents chosen for an earlier one"
                                : how.toString();
    }

    private static String reasons(Map<String, List<String>> reasons) {
        List<String> words = new ArrayList<>();
        reasons.forEach((why, ids) -> words.add(named(ids) + ": " + why));
        return String.join("; ", words);
    }

    static String named(List<String> ids) {
        return ids.size() > MOST_NAMED
                ? String.join(", ", ids.subList(0, MOST_NAMED)) + " and " + (ids.size() - MOST_NAMED) + " more"
                : String.join(", ", ids);
    }

    /**
     * Answers how frequent the alleles of a locus are, by unrelated animals, each by its own looks and tests.
     *
     * @param locus id of a locus
     * @param animals ids of the animals; those without recorded parents if there are none
     * @param asked the allele that is told first; the first of the locus if none
     * @return the frequency of each allele
     * @throws ProblemsException if there is no such locus or animal, alleles cannot be counted at the locus, or no animal says anything of it
     */
    public EstimateAnswer frequencies(String locus, Collection<String> animals, Optional<String> asked) {
        Model model = recorded.model();
        Pedigree pedigree = recorded.pedigree();
        List<Problem> unknown = new ArrayList<>();
        if (!model.loci().containsKey(locus)) {
            unknown.add(Problems.unknown(
                    Stage.REFERENCES,
                    "unknown-locus",
                    "",
                    "locus",
                    locus,
                    model.loci().keySet()));
        }
        animals.stream()
                .filter(id -> !pedigree.individuals().containsKey(id))
                .forEach(id -> unknown.add(Problems.unknown(
                        Stage.REFERENCES,
                        "unknown-individual",
                        "",
                        "individual",
                        id,
                        pedigree.individuals().keySet())));
        if (!unknown.isEmpty()) {
            throw new ProblemsException(unknown);
        }
        Locus at = model.locus(locus);
        Set<String> traits = traits(recorded, List.of(locus));
        RecordBasis basis = recorded.basis(traits, false);
        Inference questions = Inference.of(basis.answers().compiled(), pedigree).with(recorded.confusions());
        UnrelatedAnimals found = UnrelatedAnimals.of(questions, pedigree, model, locus, animals);
        if (found.counts().isEmpty()) {
            throw new ProblemsException(Problem.of(
                            Stage.MEANING,
                            "no-animal",
                            "",
                            "the records of no such animal leave a set of genotypes at locus " + locus + ": "
                                    + found.silent().size() + " say nothing of it, "
                                    + found.unclear().size()
                                    + " hang on more than this locus")
                    .expecting("unrelated animals whose looks or tests tell genotypes of the locus apart"));
        }
        Draft draft = new Draft("How frequent are the alleles of locus " + locus + " among "
                + (animals.isEmpty() ? "animals without recorded parents" : "the animals named") + "?");
        found.counts()
                .forEach((pairs, number) -> draft.given.add(Words.counted(number, "animal", "animals") + " that may be "
                        + String.join(
                                " or ",
                                at.pairs().stream()
                                        .filter(pairs::contains)
                                        .map(Object::toString)
                                        .toList())));
        try {
            Frequencies.add(model, at, found.counting(), found.genotypes(), asked, level, draft);
        } catch (IllegalArgumentException e) {
            throw new ProblemsException(Problem.of(Stage.MEANING, "not-counted", "", String.valueOf(e.getMessage())));
        }
        if (found.living().size() < at.pairs().size()) {
            draft.notices.add("by the model no animal lives that is "
                    + at.pairs().stream()
                            .filter(pair -> !found.living().contains(pair))
                            .map(Object::toString)
                            .collect(Collectors.joining(" or "))
                    + ", so none is taken to be; the frequencies are those among animals that live");
        }
        draft.few(found.total(), "animal", "animals");
        Proved.add(questions, at, animals.isEmpty() ? pedigree.founders() : ImmutableSet.copyOf(animals), asked, draft);
        if (!found.silent().isEmpty()) {
            draft.notices.add("not counted: " + named(found.silent()) + ", whose records say nothing of the locus");
        }
        if (!found.unclear().isEmpty()) {
            draft.notices.add("not counted: " + named(found.unclear())
                    + ", whose records hang on another locus too, on chance, or on a test that may be wrong. If such animals have"
                    + " other genotypes than those that count, the frequencies are off");
        }
        basis.assumptions().forEach(one -> draft.taken.put(one.id(), one));
        draft.evidence = basis.evidence();
        draft.notices.addAll(basis.notices());
        records(draft, QuestionKind.CARRIERS);
        return draft.answer();
    }

    private void records(Draft draft, QuestionKind kind) {
        Recorded.add(recorded, kind, draft);
    }

    /** The recorded traits of which the model speaks and that hang on one of some loci; on any if there are none. */
    static Set<String> traits(RecordedAnswers recorded, Collection<String> loci) {
        Set<String> found = new LinkedHashSet<>();
        recorded.pedigree()
                .individuals()
                .values()
                .forEach(one -> one.observations().forEach(seen -> found.addAll(seen.traits())));
        found.retainAll(recorded.model().visibleTraits());
        if (!loci.isEmpty()) {
            CompiledModel compiled = CompiledModel.of(recorded.model());
            found.removeIf(trait -> compiled.lociRead(List.of(trait)).stream().noneMatch(loci::contains));
        }
        return found;
    }
}
