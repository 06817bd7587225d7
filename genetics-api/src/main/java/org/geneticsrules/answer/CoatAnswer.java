package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.explanation.CoatExplanation;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.explanation.Look;
import org.geneticsrules.explanation.RestsOn;
import org.geneticsrules.explanation.Way;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** Puts one answer about an animal's look together. */
final class CoatAnswer {

    /** Where all traits are asked for, no more ways or looks than this are gone through at once, by no more tests. */
    private static final int MOST_WAYS = 1_000;

    private static final int MOST_APART = 8_000;

    private static final int MOST_TESTS = 10_000;

    private final Answers answers;
    private final CompiledModel compiled;
    private final CoatQuestion question;
    private final QuestionKind kind;
    private final Animal animal;
    private final Asked asked;
    private final View view;
    private final Set<String> read;
    private final Draft draft = new Draft();

    CoatAnswer(Answers answers, CoatQuestion question, QuestionKind kind) {
        this.answers = answers;
        this.kind = kind;
        this.compiled = answers.compiled();
        this.question = question;
        this.animal = question.animal();
        Asked all =
                Asked.of(compiled, "the animal", question.traits(), question.stage(), Stages.of(animal.genotypes()));
        this.asked = question.traits().isEmpty() ? all.together(traits -> fits(all.stage(), traits)) : all;
        this.view = new View(asked.traits(), asked.stage(), Census.CONCEIVED);
        this.read = compiled.lociRead(view);
    }

    /** Whether some traits can be answered together: the ways of one animal are gone through, or the looks of any. */
    private boolean fits(LifeStage stage, List<String> traits) {
        View together = new View(traits, stage, Census.CONCEIVED);
        GenotypeSet known = animal.genotypes();
        if (known.isEmpty() || !open(known, compiled.lociRead(together)).isEmpty()) {
            return Asked.fits(compiled, together, MOST_WAYS, MOST_TESTS);
        }
        for (Sex sex : known.sexes()) {
            Genotype genotype = example(known, sex);
            double ways = 1;
            for (String trait : traits) {
                ways *= compiled.express(genotype, sex, stage, List.of(trait))
                        .outcomes()
                        .size();
            }
            // traits that rest on one draw have fewer ways together than apart
            boolean few = ways <= MOST_WAYS
                    || (ways <= MOST_APART
                            && compiled.express(genotype, sex, stage, traits)
                                            .outcomes()
                                            .size()
                                    <= MOST_WAYS);
            if (!few) {
                return false;
            }
        }
        return true;
    }

    Answer answer() {
        draft.notices.addAll(asked.notices());
        draft.notices.addAll(animal.notices());
        String verdict = verdict();
        draft.given.addAll(animal.given().isEmpty() ? ImmutableList.of("nothing stated") : animal.given());
        if (!question.stage().equals(LifeStage.unstated())) {
            draft.given.add("looked at: " + question.stage());
        }
        draft.assumptions
                .model(answers.model())
                .omitted("the animal", animal)
                .told(compiled, animal.takenAsTold())
                .lit(animal.takenAsLit())
                .named(animal.names())
                .stage("the animal", question.stage(), compiled, asked.takenAsTold());
        List<Phenotype> seen = answers.cautionLooks(
                animal, named -> PossibleLooks.of(compiled, animal.genotypes(), named, question.stage()));
        draft.cautions.addAll(answers.cautions(Situation.of(kind.word()).with(Role.ANIMAL, seen)));
        return draft.answer(
                answers,
                new Question(
                        kind.word(),
                        kind == QuestionKind.SALE
                                ? "What is to be told of this animal to whoever takes it over?"
                                : "How does this animal's look come about, and what does it not tell?",
                        asked.traits(),
                        question.stage(),
                        Census.CONCEIVED,
                        Optional.empty(),
                        animal.sightings(),
                        answers.young()),
                verdict,
                this::opinion);
    }

    /** What a rival answers about the same traits. */
    private RivalModel.Opinion opinion(Answers other) {
        CoatQuestion same =
                new CoatQuestion(animal.under(other.compiled()), ImmutableSet.copyOf(asked.traits()), question.stage());
        Answer answer = new CoatAnswer(other, same, kind).answer();
        return new RivalModel.Opinion(answer.verdict(), true, answer::cautions);
    }

    private String verdict() {
        if (animal.genotypes().isEmpty()) {
            draft.undecided();
            String why = animal.stated().isEmpty()
                    ? "no animal of that sex has that genotype"
                    : "no genotype has that look and those alleles";
            return "What is stated of the animal contradicts itself under this model: " + why
                    + ". Re-examine the record, or the model.";
        }
        GenotypeSet known = born(animal.genotypes());
        if (known.isEmpty()) {
            draft.undecided();
            return "No animal of this genotype is ever born under this model. Re-examine the record, or the model.";
        }
        draft.statements.addAll(answers.behindLooks(animal, read));
        Set<Sex> sexes = animal.sex().<Set<Sex>>map(ImmutableSet::of).orElseGet(known::sexes);
        Set<String> open = open(known, read);
        boolean goesOn = LooksBehind.sharesChance(compiled, view, animal.readings());
        if (!goesOn && open.isEmpty() && (sexes.size() == 1 || !compiled.dependsOnSex(view))) {
            Sex sex = sexes.iterator().next();
            Genotype genotype = example(known, sex);
            return certain(genotype, sex, new ChanceWays(compiled, view, genotype, sex).explain(draft.because));
        }
        LooksBehind looks = LooksBehind.of(compiled, view, known, goesOn ? animal.readings() : List.of());
        if (looks.isEmpty()) {
            draft.undecided();
            return "What is stated of the animal contradicts itself under this model: what was seen of it cannot go on as it"
                    + " is asked. Re-examine the record, or the model.";
        }
        if (open(known, looks.loci()).isEmpty() && (sexes.size() == 1 || !looks.dependsOnSex())) {
            Sex sex = sexes.iterator().next();
            Genotype genotype = example(known, sex);
            return certain(genotype, sex, looks.explain(genotype, sex, draft.because));
        }
        return uncertain(known, open, looks);
    }

    private static Set<String> open(GenotypeSet known, Collection<String> loci) {
        Set<String> open = new LinkedHashSet<>(loci);
        open.removeIf(locus -> known.pairs(locus).size() == 1);
        return open;
    }

    /** What an animal that is looked at may carry: nothing with which no animal is ever born. */
    private GenotypeSet born(GenotypeSet set) {
        GenotypeSet left = set;
        for (Viability one : answers.model().viability().values()) {
            if (one.birth().isZero()) {
                Locus locus = answers.model().locus(one.locus());
                GenotypeSet lost = GenotypeSet.all(answers.model());
                for (Sex sex : one.sex().<Set<Sex>>map(ImmutableSet::of).orElse(ImmutableSet.copyOf(Sex.values()))) {
                    List<AllelePair> pairs = locus.pairs(sex).stream()
                            .filter(pair -> one.expressions().contains(locus.expression(pair, sex)))
                            .toList();
                    left = left.minus(lost.of(sex).where(locus.id(), pairs));
                }
            }
        }
        return left;
    }

    /** The genotype is known wherever it matters, so that at most chance decides. */
    private String certain(Genotype genotype, Sex sex, Distribution<Phenotype> chances) {
        chances.asMap()
                .forEach((look, chance) ->
                        draft.outcomes.add(new Outcome(look, Optional.of(chance), ImmutableSet.of())));
        Set<Look> steps = new LinkedHashSet<>();
        Map<String, Hidden> hidden = new LinkedHashMap<>();
        for (CoatExplanation way :
                CoatExplanation.of(compiled, genotype, sex, view).outcomes()) {
            if (!chances.probability(way.phenotype()).isZero()) {
                steps.addAll(way.looks());
                way.hidden().forEach(one -> hidden.putIfAbsent(one.locus() + " behind " + one.phenotype(), one));
                draft.statements.addAll(way.statements());
            }
        }
        draft.because.addAll(steps);
        draft.hidden.addAll(hidden.values());
        if (draft.because.stream()
                .anyMatch(one -> one instanceof Way way && !way.factors().isEmpty())) {
            draft.assumptions.chance();
        }
        return Verdicts.shows(chances, asked.traits());
    }

    private String uncertain(GenotypeSet known, Set<String> open, LooksBehind looks) {
        for (Phenotype look : looks.possible()) {
            draft.outcomes.add(new Outcome(look, Optional.empty(), ImmutableSet.of()));
            draft.hidden.addAll(looks.hidden(look));
        }
        Map<String, List<AllelePair>> carried = new LinkedHashMap<>();
        read.forEach(locus -> carried.put(locus, known.pairs(locus)));
        draft.statements.addAll(RestsOn.of(compiled, carried, view).statements());
        if (looks.possible().size() > 1) {
            return "What is known allows " + looks.possible().size()
                    + " looks; more must be seen or tested to tell them apart.";
        }
        Phenotype look = looks.possible().iterator().next();
        draft.because.addAll(looks.example(look));
        return "The animal shows " + Verdicts.words(look, asked.traits())
                + (open.isEmpty()
                        ? ", whatever its sex."
                        : kind == QuestionKind.SALE
                                ? "; it may pass on what nobody can see."
                                : "; its look leaves the genotype open at " + named(open) + ".");
    }

    /** Loci in words, as far as they have any. */
    private String named(Set<String> loci) {
        return loci.stream()
                .map(locus -> answers.model()
                        .locus(locus)
                        .title()
                        .map(title -> "\"" + title + "\"")
                        .orElse(locus))
                .collect(Collectors.joining(", "));
    }

    private Genotype example(GenotypeSet set, Sex sex) {
        List<AllelePair> pairs = new ArrayList<>();
        set.of(sex).sexedBoxes().get(0).pairs().values().forEach(allowed -> pairs.add(allowed.get(0)));
        return Genotype.of(answers.model(), pairs);
    }
}
