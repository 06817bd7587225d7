package org.geneticsrules.answer.recorded;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.recorded.Later.OfState;
import org.geneticsrules.answer.recorded.Later.OfTrait;
import org.geneticsrules.answer.recorded.Later.Word;
import org.geneticsrules.answer.recorded.LookNext.Whether;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.explanation.RestsOn;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.View;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.inference.Possibility;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Statement;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Kindreds;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Confusion;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Trait;

/** Puts together what an animal may show at a stage of its life. */
final class LaterAnswer {

    /** What rounding may add to a sum of chances. */
    private static final double ROUNDING = 1e-9;

    private final Ground ground;
    private final LaterQuestion question;
    private final String animal;
    private final Pedigree kindred;
    private final Individual recorded;
    private final List<String> traits;
    private final WhenTold told;
    private final Draft draft;
    private final Optional<Covering> covering;
    private final Map<String, Set<String>> loci = new LinkedHashMap<>();
    private final Map<String, List<AllelePair>> left = new HashMap<>();

    /**
     * Prepares the question.
     *
     * @param masked whether it is told by which masks states may be hidden
     */
    LaterAnswer(Ground ground, LaterQuestion question, boolean masked) {
        this.ground = ground;
        this.question = question;
        this.animal = question.animal();
        this.kindred = Kindreds.of(ground.pedigree()).around(List.of(animal));
        this.recorded = kindred.individual(animal);
        NextLitterAnswer.requireRuled(ground, question.traits());
        model().catalogue().check(question.stage());
        this.told = new WhenTold(ground, question.stage());
        this.traits = model().visibleTraits().stream()
                .filter(trait ->
                        question.traits().isEmpty() || question.traits().contains(trait))
                .toList();
        if (!question.traits().isEmpty()) {
            requireTold();
        }
        LookLoci read = new LookLoci(ground.compiled(), recorded);
        traits.forEach(trait -> loci.put(trait, read.of(trait)));
        this.draft = new Draft(ground);
        this.covering = masked
                ? Optional.of(new Covering(ground, kindred, recorded, question.stage(), this::left))
                : Optional.empty();
    }

    private Model model() {
        return ground.model();
    }

    /** Refuses traits that were asked for by name and cannot be told at the stage, all of them at once. */
    private void requireTold() {
        List<Problem> problems = new ArrayList<>();
        traits.forEach(trait -> problems.addAll(told.problems(trait)));
        if (!problems.isEmpty()) {
            throw new ProblemsException(problems);
        }
    }

    RecordedAnswer answer() {
        Set<String> all = new LinkedHashSet<>(model().loci().keySet());
        Set<String> named = new LinkedHashSet<>();
        loci.values().forEach(named::addAll);
        all.retainAll(named);
        List<Weighed<Supposed>> weighed = ground.weigh(
                origin -> new Supposed(ground.inference(kindred, origin), kindred, animal, all), draft.notices);
        List<Supposed> supposed = weighed.stream().map(Weighed::found).toList();
        boolean contradicted = supposed.stream().anyMatch(one -> !one.before().isConsistent())
                || fits(kindred, all) == Whether.EXCLUDED;
        List<OfTrait> rows = new ArrayList<>();
        if (contradicted) {
            draft.undecided();
            draft.conflicts(kindred, ground.inference(kindred).contradictions());
        } else {
            traits.forEach(trait -> rows.add(row(trait, supposed)));
        }
        List<Origin> origins = weighed.stream().map(Weighed::origin).toList();
        Later found = new Later(animal, question.stage(), origins, rows);
        complete(found, all);
        return draft.answer(
                "later",
                "What may " + RecordWords.quoted(animal) + " show at " + question.stage() + "?",
                new LaterWords(found, !question.traits().isEmpty()).verdict(contradicted),
                found);
    }

    private Whether fits(Pedigree records, Set<String> at) {
        Set<String> asked =
                at.isEmpty() ? Set.of(model().loci().keySet().iterator().next()) : at;
        return Fits.of(model(), ground.inference(records), animal, asked);
    }

    private OfTrait row(String trait, List<Supposed> supposed) {
        Optional<Trait> described = model().catalogue().trait(trait);
        boolean ordered = described.map(Trait::ordered).orElse(false);
        if (told.isTooEarly(trait)) {
            return new OfTrait(trait, ordered, Word.NOT_YET, List.of(), told.from(trait), told.note(trait));
        }
        Optional<String> lacking = told.lacking(trait);
        if (lacking.isPresent()) {
            return new OfTrait(trait, ordered, Word.STAGE_NEEDED, List.of(), lacking, told.note(trait));
        }
        Map<String, List<Chance>> chances = new LinkedHashMap<>();
        model().states(trait).forEach(state -> chances.put(state, new ArrayList<>()));
        boolean claims = claims(trait, supposed, chances);
        List<OfState> states = claims ? states(trait, chances) : List.of();
        return new OfTrait(trait, ordered, word(claims, states), states, told.from(trait), told.note(trait));
    }

    private static Word word(boolean claims, List<OfState> states) {
        if (!claims) {
            return Word.NO_CLAIM;
        }
        if (states.stream().anyMatch(one -> one.whether() == Whether.UNDECIDED)) {
            return Word.UNDECIDED;
        }
        long possible =
                states.stream().filter(one -> one.whether() == Whether.POSSIBLE).count();
        return possible == 1 ? Word.SHOWS : Word.MAY_SHOW;
    }

    /**
     * Weighs each state by each origin. An animal for which the model makes no claim counts with every one of k states, so that the chances
     * sum to 1 + (k - 1) q, q being how likely such an animal is.
     *
     * @return whether the model makes a claim for all that the animal may carry
     */
    private boolean claims(String trait, List<Supposed> supposed, Map<String, List<Chance>> chances) {
        Set<String> at = Objects.requireNonNull(loci.get(trait));
        boolean weighed = chances.size() > 1 && !supposed.isEmpty();
        for (Supposed one : supposed) {
            double sum = 0;
            Standing before = one.standing(at);
            for (Map.Entry<String, List<Chance>> state : chances.entrySet()) {
                Chance chance = before == Standing.EXACT
                        ? one.with(looking(trait, state.getKey()), at).likely()
                        : Chance.unsettled(Standing.TOO_LARGE);
                state.getValue().add(chance);
                sum += chance.value().orElse(0);
                weighed &= chance.isSettled();
            }
            if (sum > 1 + ROUNDING) {
                return false;
            }
        }
        return weighed || alwaysClaims(trait);
    }

    /** Whether a claim is made for every combination of what is left at single loci. */
    private boolean alwaysClaims(String trait) {
        GenotypeSet known = GenotypeSet.all(model());
        for (String locus : ground.compiled().lociRead(List.of(trait))) {
            known = known.where(locus, left(locus));
        }
        Optional<Sex> sex = PlannedMating.sex(kindred, animal);
        if (sex.isPresent()) {
            known = known.of(sex.get());
        }
        return ground
                .compiled()
                .diagram(new View(List.of(trait), question.stage(), Census.CONCEIVED))
                .among(known)
                .stream()
                .allMatch(look -> look.state(trait).isPresent());
    }

    private Individual looking(String trait, String state) {
        return recorded.with(Observation.of(question.stage(), Phenotype.of(trait, state)));
    }

    private List<OfState> states(String trait, Map<String, List<Chance>> chances) {
        Map<String, Whether> whether = new LinkedHashMap<>();
        chances.forEach((state, likely) -> whether.put(state, whether(trait, state, likely)));
        List<String> shown = whether.entrySet().stream()
                .filter(one -> one.getValue() != Whether.EXCLUDED)
                .map(Map.Entry::getKey)
                .toList();
        Optional<Map<String, Set<String>>> masks =
                covering.map(one -> one.masks(trait, shown)).orElse(Optional.of(Map.of()));
        if (masks.isEmpty()) {
            draft.notices.add("by which masks " + trait + " may be hidden then was too much to work out");
        }
        List<OfState> states = new ArrayList<>();
        chances.forEach((state, likely) -> {
            draft.settled(likely);
            states.add(new OfState(
                    state,
                    Objects.requireNonNull(whether.get(state)),
                    likely,
                    masks.map(by -> List.copyOf(by.getOrDefault(state, Set.of())))
                            .orElse(List.of())));
        });
        return states;
    }

    /** What has a chance is possible, unless that rests on mutation. */
    private Whether whether(String trait, String state, List<Chance> chances) {
        boolean changing = model().loci().values().stream()
                .anyMatch(locus -> !locus.mutation().isEmpty());
        boolean likely = chances.stream().anyMatch(one -> one.value().orElse(0) > 0);
        return likely && !changing
                ? Whether.POSSIBLE
                : fits(Supposed.put(kindred, looking(trait, state)), Objects.requireNonNull(loci.get(trait)));
    }

    /** The genotypes that all records leave at a locus. */
    private List<AllelePair> left(String locus) {
        return left.computeIfAbsent(locus, id -> {
            List<AllelePair> found = new ArrayList<>();
            ground.inference(kindred).possible(id).of(animal).forEach((pair, possibility) -> {
                if (!(possibility instanceof Possibility.Excluded)) {
                    found.add(pair);
                }
            });
            return found;
        });
    }

    private void complete(Later found, Set<String> all) {
        draft.given.addAll(new RecordWords(kindred).facts(animal));
        draft.given.add(
                "related animals in the pedigree: " + (kindred.individuals().size() - 1));
        draft.rest(kindred, all, found.origins());
        List<OfTrait> rows =
                found.traits().stream().filter(row -> !row.states().isEmpty()).toList();
        rows.forEach(row -> rests(row.trait()));
        draft.notices(kindred, ground.inference(kindred).notices());
        taken(rows);
        if (found.origins().isEmpty()) {
            draft.undecided();
        }
        Animal own = OwnRecords.of(ground.compiled(), recorded);
        draft.raise(OwnRecords.coat(ground.answers(), own));
        draft.raise(ground.answers().cautions(QuestionKind.COAT, look -> mayShow(look, rows)));
    }

    private void rests(String trait) {
        View view = new View(List.of(trait), question.stage(), Census.CONCEIVED);
        Map<String, List<AllelePair>> pairs = new LinkedHashMap<>();
        ground.compiled().lociRead(view).forEach(locus -> pairs.put(locus, left(locus)));
        try {
            draft.statements.addAll(RestsOn.of(ground.compiled(), pairs, view).statements());
        } catch (TooLargeException manyStatements) {
            draft.notices.add("what the look of " + trait + " rests on is too much to tell");
        }
    }

    /** Whether the animal shows a look then or showed it, as far as that was asked or recorded. */
    private boolean mayShow(Condition look, List<OfTrait> rows) {
        for (Map.Entry<String, Allowed> one : look.variables().entrySet()) {
            Set<String> states = new LinkedHashSet<>();
            rows.stream()
                    .filter(row -> row.trait().equals(one.getKey()))
                    .forEach(row -> row.left().forEach(state -> states.add(state.state())));
            recorded.observations()
                    .forEach(seen -> seen.looks()
                            .forEach(shown -> shown.state(one.getKey()).ifPresent(states::add)));
            if (states.stream().noneMatch(one.getValue()::allows)) {
                return false;
            }
        }
        return true;
    }

    /** What is taken for granted of the time until then. */
    private void taken(List<OfTrait> rows) {
        List<String> ages = new ArrayList<>();
        boolean chance = false;
        for (OfTrait row : rows) {
            if (model().catalogue().judgeable(row.trait(), question.stage()) == Judgeable.UNKNOWN) {
                ages.add(row.trait());
            }
            if (ground.confusions().all().stream().map(Confusion::trait).anyMatch(row.trait()::equals)) {
                draft.notices.add("errors of naming count in what may be recorded of " + row.trait() + " then");
            }
        }
        if (!ages.isEmpty()) {
            draft.taken.add(
                    "told-by-then",
                    "By then these can be told, though the stage does not say so: " + String.join(", ", ages) + ".",
                    "Earlier they cannot; ask with the age or the moult.");
        }
        for (TraitRule rule : model().rules().values()) {
            for (Case one : rule.allCases()) {
                if (draft.statements.contains(rule.pointer(one)) && !(one.gives() instanceof CaseState.Certain)) {
                    chance = true;
                    course(rule, one);
                }
            }
        }
        if (chance) {
            draft.taken.add(
                    "independent-chances",
                    "What the model leaves to chance is decided once in the life of each animal, for each by itself.",
                    "If something that relatives share plays a part, one of them tells more of another than is said here.");
        }
    }

    /** A course of life is only as sure as its statement, so that is said by name. */
    private void course(TraitRule rule, Case one) {
        if (one.gives() instanceof CaseState.Progression steps) {
            Statement said = Objects.requireNonNull(model().statements().get(rule.pointer(one)));
            Grade grade = said.grade();
            draft.taken.add(
                    "course-of-" + rule.trait().replace(' ', '-') + "-"
                            + one.id().replace(' ', '-'),
                    "From " + steps.clock().word() + " to " + steps.clock().word() + ", \"" + rule.trait()
                            + "\" changes as the model says, with the chances that it says; the grade of that is "
                            + grade.word() + ": " + grade.meaning() + ".",
                    "With other steps the range changes too, with other chances only how likely each state is."
                            + (steps.monotone() ? " The model holds that it never goes back." : ""));
        }
    }
}
