package org.geneticsrules.answer;

import com.google.common.collect.ImmutableSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.cross.UncertainCross;
import org.geneticsrules.explanation.MatingExplanation;
import org.geneticsrules.model.Population;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** Answers one question about a mating. */
final class MatingAnswer {

    private static final String UNLISTED = "the chances each look may have are not listed: ";

    private final Answers answers;
    private final Mating mating;
    private final Verdicts verdicts;
    private final UncertainCross cross;
    private final Draft draft = new Draft();
    private final MatingFrame frame;
    private boolean explains = true;

    MatingAnswer(Answers answers, MatingQuestion question) {
        this.answers = answers;
        this.mating = Mating.of(answers, question);
        this.verdicts = new Verdicts(answers.young(), !mating.seen().isEmpty());
        this.cross = mating.cross();
        this.frame = new MatingFrame(answers, mating);
    }

    Answer answer() {
        draft.notices.addAll(mating.notices());
        mating.parents().forEach(parent -> draft.notices.addAll(parent.notices()));
        String verdict = verdict();
        frame.complete(draft, cross, weighs() || !draft.weightings.isEmpty());
        return draft.answer(answers, frame.question(), verdict, this::opinion);
    }

    /** What a rival answers about the same traits, without working out reasons unless its cautions are wanted. */
    private RivalModel.Opinion opinion(Answers other) {
        MatingQuestion same = mating.question().inTraits(mating.view().traits()).under(other.compiled());
        MatingAnswer brief = new MatingAnswer(other, same);
        brief.explains = false;
        return new RivalModel.Opinion(
                brief.verdict(),
                true,
                () -> new MatingAnswer(other, same).answer().cautions());
    }

    private String verdict() {
        if (cross.isContradictory()) {
            return contradiction();
        }
        return weighs() ? weighted() : unweighted();
    }

    /** Whether what is not known is weighted by the populations stated; a contradiction has no weight. */
    private boolean weighs() {
        return cross.isContradictory()
                || cross.missingFrequencies(mating.view(), mating.seen()).isEmpty();
    }

    /** All that matters about the parents is known, or weighted by populations of their own. */
    private String weighted() {
        if (cross.probable(mating.view()).isEmpty()) {
            return nothingCounted(cross);
        }
        draft.populations.addAll(frame.populationsUsed());
        Optional<Distribution<Phenotype>> given = looks(cross);
        if (given.isEmpty()) {
            return impossibleKits();
        }
        Distribution<Phenotype> looks = given.get();
        looks.asMap().forEach((look, p) -> draft.outcomes.add(new Outcome(look, Optional.of(p), ImmutableSet.of())));
        explained(cross).ifPresent(this::reasons);
        lose(cross);
        if (mating.event().isEmpty()) {
            return verdicts.ratio(looks);
        }
        Distribution<Probability> chances = chances(cross).orElseThrow();
        Probability next = mean(chances);
        draft.probability = Optional.of(next);
        draft.litter = litter(chances);
        return verdicts.chance(mating.event().get(), next);
    }

    /** Frequencies are missing: what is possible, and what is probable under each population of the model. */
    private String unweighted() {
        for (Phenotype look : cross.possible(mating.view())) {
            Set<Probability> chances = possibleChances(look);
            boolean excluded = !mating.seen().isEmpty() && chances.stream().allMatch(Probability::isZero);
            if (!excluded || chancesUnlisted()) {
                draft.outcomes.add(new Outcome(look, Optional.empty(), chances));
            }
        }
        if (draft.outcomes.isEmpty()) {
            return mating.seen().isEmpty() ? nothingCounted(cross) : impossibleKits();
        }
        String verdict = mating.event()
                .map(event -> verdicts.possible(event, cross.possibleChances(mating.eventView(), event, mating.seen())))
                .orElseGet(() -> verdicts.possible(
                        draft.outcomes.stream().map(Outcome::phenotype).toList()));
        draft.populations.addAll(frame.populationsUsed());
        answers.model().populations().values().forEach(this::weigh);
        if (draft.weightings.isEmpty()) {
            draft.status = Status.UNDECIDED;
            draft.notices.add("no population of the model has the frequencies that a weighted answer needs");
        }
        return verdict;
    }

    private void weigh(Population population) {
        UncertainCross assumed = mating.cross(Optional.of(population));
        if (!assumed.missingFrequencies(mating.view(), mating.seen()).isEmpty()) {
            draft.notices.add(
                    "population \"" + population.id() + "\" names no frequencies for all loci that matter here");
            return;
        }
        draft.populations.add(population);
        Optional<Distribution<Probability>> chances = mating.event().flatMap(event -> chances(assumed));
        draft.weightings.add(new Weighting(
                population,
                looks(assumed),
                chances.map(MatingAnswer::mean),
                chances.flatMap(this::litter),
                lost(assumed),
                chances.isPresent() && explains ? tippings(population) : List.of()));
        explained(assumed).ifPresent(reasons -> {
            if (draft.because.isEmpty()) {
                reasons(reasons);
                draft.notices.add("reasons and hidden loci are shown for population \"" + population.id() + "\"");
            }
            draft.statements.addAll(reasons.statements());
        });
    }

    /** The reasons; where they are too many to list, the numbers stand without them, and rest on all that may bear on them. */
    private Optional<MatingExplanation> explained(UncertainCross parents) {
        if (!explains) {
            return Optional.empty();
        }
        if (!draft.unexplained) {
            try {
                return parents.explain(mating.view());
            } catch (TooLargeException e) {
                draft.unexplained = true;
                draft.notices.add("the numbers are exact, but their reasons and what stays hidden are left out: "
                        + e.getMessage());
            }
        }
        draft.statements.addAll(frame.behindKits());
        draft.statements.addAll(frame.behindLooks());
        return Optional.empty();
    }

    private void reasons(MatingExplanation reasons) {
        draft.because.addAll(reasons.cases());
        draft.because.addAll(reasons.ways());
        draft.hidden.addAll(reasons.hidden());
        draft.statements.addAll(reasons.statements());
        draft.statements.addAll(frame.behindLooks());
        if (!mating.seen().isEmpty()) {
            draft.notices.add("the reasons and hidden loci are those of a first "
                    + answers.young().one() + "; the chances take the "
                    + answers.young().many() + " already seen into account");
        }
    }

    private Set<Probability> possibleChances(Phenotype look) {
        try {
            return cross.possibleChances(mating.view(), look, mating.seen());
        } catch (TooLargeException e) {
            if (!chancesUnlisted()) {
                draft.notices.add(UNLISTED + e.getMessage());
            }
            return ImmutableSet.of();
        }
    }

    private boolean chancesUnlisted() {
        return draft.notices.stream().anyMatch(notice -> notice.startsWith(UNLISTED));
    }

    /** What the next kit may show, in the light of the kits seen already. */
    private Optional<Distribution<Phenotype>> looks(UncertainCross parents) {
        Optional<Distribution<Phenotype>> before = parents.probable(mating.view());
        if (mating.seen().isEmpty() || before.isEmpty()) {
            return before;
        }
        Map<Phenotype, Probability> after = new LinkedHashMap<>();
        for (Phenotype look : before.get().outcomes()) {
            parents.next(mating.view(), look, mating.seen()).ifPresent(chance -> after.put(look, chance));
        }
        return after.isEmpty() ? Optional.empty() : Optional.of(Distribution.of(after));
    }

    private Optional<Distribution<Probability>> chances(UncertainCross parents) {
        return parents.chance(mating.eventView(), mating.event().orElseThrow(), mating.seen());
    }

    private static Probability mean(Distribution<Probability> chances) {
        Probability mean = Probability.ZERO;
        for (Map.Entry<Probability, Probability> one : chances.asMap().entrySet()) {
            mean = mean.plus(one.getKey().times(one.getValue()));
        }
        return mean;
    }

    private Optional<Litter> litter(Distribution<Probability> chances) {
        return mating.question().litter().map(size -> Litter.of(size, chances));
    }

    private List<Tipping> tippings(Population population) {
        try {
            return Tipping.of(mating, population, this::whole);
        } catch (TooLargeException e) {
            draft.notices.add("at which frequency the answer turns is left out: " + e.getMessage());
            return List.of();
        }
    }

    /** The chance that the look asked for occurs: in the litter, where one is asked for, else in the next kit. */
    private Optional<Probability> whole(UncertainCross parents) {
        return chances(parents).map(some -> litter(some).map(Litter::atLeastOne).orElseGet(() -> mean(some)));
    }

    private void lose(UncertainCross parents) {
        draft.lost = lost(parents);
        if (draft.lost.isPresent()) {
            draft.statements.addAll(frame.behindLosses());
        }
    }

    private Optional<Probability> lost(UncertainCross parents) {
        boolean known = mating.losesAny()
                && parents.missingFrequencies(mating.view().census()).isEmpty();
        return known ? parents.lostShare(mating.view().census()) : Optional.empty();
    }

    private String contradiction() {
        draft.undecided();
        List<Animal> parents = mating.parents();
        for (int i = 0; i < parents.size(); i++) {
            Sex sex = i == parents.size() - 1 ? Sex.FEMALE : Sex.MALE;
            if (parents.get(i).stated().isEmpty() && !mating.stated(i).stated().isEmpty()) {
                return contradicted(i, "no " + sex.word() + " has that genotype");
            }
            if (parents.get(i).genotypes().isEmpty()) {
                return contradicted(i, "no genotype has that look and those alleles");
            }
        }
        for (int i = 0; i < parents.size(); i++) {
            if (frame.isContradictory(i)) {
                return contradicted(i, "no animal of that genotype lives to become a parent");
            }
        }
        throw new IllegalStateException("no parent contradicts itself in " + cross);
    }

    private String contradicted(int parent, String why) {
        return "What is stated of the " + mating.role(parent) + " contradicts itself under this model: " + why
                + ". Re-examine the record, or the model.";
    }

    private String impossibleKits() {
        draft.undecided();
        String many = answers.young().many();
        return "The " + many + " already seen cannot all be " + many
                + " of these parents under this model. Re-examine their looks, the parents' records, or the model.";
    }

    /** Nothing is probable: either the parents have no weight, or all their kits are lost. */
    private String nothingCounted(UncertainCross parents) {
        draft.undecided();
        if (parents.possible(mating.view()).isEmpty()) {
            lose(parents);
            return "Of the " + answers.young().many() + " of these parents none is ever "
                    + mating.view().census().word()
                    + " under this model, so that nothing can be said of what one shows. Re-examine the parents' records, or"
                    + " the model.";
        }
        return "What is stated of a parent has no weight in the population named: an allele it must carry is given"
                + " frequency 0 there.";
    }
}
