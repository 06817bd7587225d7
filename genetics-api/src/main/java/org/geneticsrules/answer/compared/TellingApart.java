package org.geneticsrules.answer.compared;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.compared.TellApartAnswer.LeftOut;
import org.geneticsrules.answer.compared.TellApartAnswer.OfModel;
import org.geneticsrules.answer.recorded.Progress;
import org.geneticsrules.answer.recorded.RecordBasis;
import org.geneticsrules.answer.recorded.RecordedAnswers;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.comparison.ComparedModels;
import org.geneticsrules.comparison.ModelComparison;
import org.geneticsrules.comparison.ModelFit;
import org.geneticsrules.document.Reference;
import org.geneticsrules.model.Population;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.planning.Distinguishing;
import org.geneticsrules.planning.Effort;
import org.geneticsrules.planning.KitsNeeded.Design;
import org.geneticsrules.planning.Step;
import org.geneticsrules.planning.ToldApart;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;

/** Puts together what can be done next to tell models apart. */
final class TellingApart {

    /** So many pairs of models are asked whether looks can tell them apart at all. */
    private static final int MOST_PAIRS = 6;

    private final RecordedAnswers recorded;
    private final RecordBasis basis;
    private final TellApartQuestion question;
    private final Pedigree pedigree;
    private final List<Candidate> all;
    private final Map<String, Assumption> taken = new TreeMap<>();
    private final Set<String> notices;

    /** The models that the records leave, and how they compare; no comparison where nothing was recorded. */
    private List<Candidate> candidates;

    private Optional<ComparedModels> compared = Optional.empty();
    private Optional<Population> population = Optional.empty();
    private final List<OfModel> excluded = new ArrayList<>();

    /** What has to be said of matings. */
    private final List<Caution> raised = new ArrayList<>();

    TellingApart(RecordedAnswers recorded, RecordBasis basis, TellApartQuestion question, List<Candidate> candidates) {
        this.recorded = recorded;
        this.basis = basis;
        this.question = question;
        this.pedigree = recorded.pedigree();
        this.all = candidates;
        this.candidates = candidates;
        this.notices = new LinkedHashSet<>(basis.notices());
    }

    TellApartAnswer answer(Progress progress) {
        compare();
        if (candidates.size() < 2) {
            PossibleSteps matings = new PossibleSteps(recorded, all, question, List.of(), List.of(), Set.of());
            listed(matings);
            return told(List.of(), List.of(), List.of(), matings.leftOut(), Set.of(), List.of());
        }
        Distinguishing asked = asked();
        List<String> traits = traits(asked);
        Map<String, List<ToldApart>> alone = new LinkedHashMap<>();
        traits.forEach(trait -> alone.put(trait, apart(asked, List.of(trait))));
        List<ToldApart> apart = joint(asked, traits, alone);
        boolean never = apart.size() == pairs() && isNever(apart);
        PossibleSteps possible =
                new PossibleSteps(recorded, candidates, question, traits, together(traits), ofKits(traits, alone));
        List<PossibleSteps.Possible> listed = listed(possible);
        StepsTried tried = new StepsTried(asked, progress);
        List<ApartStep> steps = tried.of(never ? List.of() : listed);
        if (!never) {
            notices.addAll(possible.notices());
        }
        notices.addAll(tried.notWorkedOut());
        List<LeftOut> leftOut = new ArrayList<>(possible.leftOut());
        leftOut.addAll(tried.leftOut());
        return told(
                traits, steps, never ? List.of() : tried.tried(possible.untried()), leftOut, tried.settled(), apart);
    }

    /** Lists what can be done; what has to be said of matings is said whatever comes of it. */
    private List<PossibleSteps.Possible> listed(PossibleSteps possible) {
        List<PossibleSteps.Possible> listed = possible.all();
        notices.addAll(possible.said());
        raised.addAll(possible.cautions());
        return listed;
    }

    private int pairs() {
        return candidates.size() * (candidates.size() - 1) / 2;
    }

    // ---- the records held

    /** Compares the models by the records held, and leaves out those that are excluded. */
    private void compare() {
        requireBelief();
        boolean bare = pedigree.individuals().values().stream()
                .allMatch(one -> one.observations().isEmpty() && one.tests().isEmpty());
        if (bare) {
            population = origin(Optional.empty());
            basis.assumptions().forEach(one -> taken.put(one.id(), one));
            population
                    .filter(one -> basis.population().isEmpty())
                    .map(Judging::foundersAsIn)
                    .ifPresent(one -> taken.put(one.id(), one));
            return;
        }
        ComparedModels first = compare(all);
        List<Candidate> left = new ArrayList<>();
        for (int m = 0; m < all.size(); m++) {
            if (first.impossible(m)) {
                excluded.add(
                        new OfModel(all.get(m).name(), all.get(m).model().reference(), Double.NEGATIVE_INFINITY, 0));
            } else {
                left.add(all.get(m));
            }
        }
        candidates = left;
        requireBelief();
        compared = excluded.isEmpty() ? Optional.of(first) : Optional.empty();
        if (compared.isEmpty() && left.size() > 1) {
            compared = Optional.of(compare(left));
        }
    }

    /** What a step clears up is reckoned by what is believed of each model. */
    private void requireBelief() {
        if (candidates.size() > 1
                && candidates.stream().allMatch(one -> one.prior().isZero())) {
            throw new ProblemsException(Problem.of(
                            Stage.MEANING,
                            "no-belief",
                            "",
                            "of the models" + (excluded.isEmpty() ? "" : " that the records leave")
                                    + " none was believed in beforehand")
                    .expecting("a share of belief above 0 for one"));
        }
    }

    private ComparedModels compare(List<Candidate> some) {
        ModelComparison comparison = ModelComparison.of(some, pedigree).with(recorded.confusions());
        Judging judging = new Judging(comparison, basis, pedigree, ModelFit.USUAL_DRAWS, ModelFit.USUAL_SEED);
        population = origin(judging.population(comparison));
        judging.assume(population);
        taken.putAll(judging.taken);
        notices.addAll(judging.notices);
        return population
                .map(one -> comparison.from(one.id()))
                .orElse(comparison)
                .compare();
    }

    /** The population of founders for whom none is stated; none if there are no such founders, or the models share none. */
    private Optional<Population> origin(Optional<String> named) {
        boolean stated = pedigree.litters().values().stream()
                        .allMatch(litter -> litter.dam().isPresent()
                                && !litter.sires().males().isEmpty())
                && pedigree.individuals().values().stream()
                        .filter(one -> pedigree.litterOf(one.id()).isEmpty())
                        .map(Individual::population)
                        .allMatch(Optional::isPresent);
        Optional<String> id = named.or(basis::population)
                .or(() -> stated
                        ? Optional.empty()
                        : Judging.populations(all).stream().findFirst());
        return id.map(
                one -> Objects.requireNonNull(all.get(0).model().populations().get(one)));
    }

    private Distinguishing asked() {
        Distinguishing plain = Distinguishing.of(candidates, pedigree)
                .with(recorded.confusions())
                .reaching(ComparedModels.bar(ComparedModels.USUAL_RISK, all.size() - 1))
                .surely(question.sure().stream()
                        .mapToDouble(one -> one.toDouble())
                        .toArray());
        Distinguishing from = population.map(one -> plain.from(one.id())).orElse(plain);
        return compared.map(from::after).orElse(from);
    }

    // ---- what is looked at

    private List<String> traits(Distinguishing asked) {
        Set<String> shared = asked.traits();
        Problems problems = new Problems(Stage.REFERENCES);
        Collection<String> known =
                candidates.get(0).model().catalogue().traits().keySet();
        for (String trait : question.traits()) {
            if (!known.contains(trait)) {
                problems.unknown("unknown-trait", "", "trait", trait, known);
            } else if (!shared.contains(trait)) {
                problems.add(
                        "trait-not-shared",
                        "",
                        "of \"" + trait + "\" not every one of these models makes a claim for every animal",
                        "one of " + String.join(", ", shared));
            }
        }
        problems.throwIfAny();
        Set<String> wanted = question.traits().isEmpty() ? recordedTraits() : question.traits();
        List<String> kept = shared.stream().filter(wanted::contains).toList();
        if (kept.isEmpty()) {
            return List.copyOf(shared);
        }
        List<String> left =
                shared.stream().filter(trait -> !kept.contains(trait)).toList();
        if (question.traits().isEmpty() && !left.isEmpty()) {
            notices.add("looks at what is recorded of nobody were not tried; they can be asked for by name: "
                    + String.join(", ", left));
        }
        return kept;
    }

    /** What is looked at together: the traits asked for; else those that were recorded of somebody. */
    private List<String> together(List<String> traits) {
        if (!question.traits().isEmpty()) {
            return traits;
        }
        Set<String> seen = recordedTraits();
        return traits.stream().filter(seen::contains).toList();
    }

    /**
     * The traits that are worth a look at kits: those asked for or recorded, and those of which models do not provably foretell the same of
     * every mating. Of the others kits could say only what they say of their parents.
     */
    private Set<String> ofKits(List<String> traits, Map<String, List<ToldApart>> alone) {
        Set<String> kept = new LinkedHashSet<>(traits);
        Set<String> seen = recordedTraits();
        kept.removeIf(trait -> question.traits().isEmpty()
                && !seen.contains(trait)
                && isNever(Objects.requireNonNull(alone.get(trait))));
        List<String> left =
                traits.stream().filter(trait -> !kept.contains(trait)).toList();
        if (!left.isEmpty() && (!question.planned().isEmpty() || question.newMatings())) {
            notices.add("looks at kits were not tried for what all models foretell alike of every mating,"
                    + " which is proved: " + String.join(", ", left));
        }
        return kept;
    }

    private static boolean isNever(List<ToldApart> some) {
        return some.stream().allMatch(one -> one.verdict() == ToldApart.Verdict.NEVER);
    }

    /** For pairs of models, whether looks at some traits can tell them apart at all. */
    private List<ToldApart> apart(Distinguishing asked, List<String> traits) {
        List<ToldApart> found = new ArrayList<>();
        for (int one = 0; one < candidates.size(); one++) {
            for (int other = one + 1; other < candidates.size() && found.size() < MOST_PAIRS; other++) {
                found.add(asked.toldApart(one, other, traits));
            }
        }
        return found;
    }

    /** The same of all traits; where one trait by itself can, all can. */
    private static List<ToldApart> joint(
            Distinguishing asked, List<String> traits, Map<String, List<ToldApart>> alone) {
        List<ToldApart> found = new ArrayList<>();
        int pairs = alone.values().stream().mapToInt(List::size).min().orElse(0);
        for (int pair = 0; pair < pairs; pair++) {
            int at = pair;
            List<ToldApart> each = alone.values().stream().map(of -> of.get(at)).toList();
            found.add(each.stream()
                    .filter(one -> one.verdict() == ToldApart.Verdict.BY_LOOKS)
                    .findFirst()
                    .orElseGet(() ->
                            asked.toldApart(each.get(0).first(), each.get(0).second(), traits)));
        }
        return found;
    }

    // ---- what is told

    private TellApartAnswer told(
            List<String> traits,
            List<ApartStep> steps,
            List<TellApartAnswer.Tried> tried,
            List<LeftOut> leftOut,
            Set<String> settled,
            List<ToldApart> apart) {
        List<OfModel> models = models();
        ApartVerdict verdict = new ApartVerdict(models, excluded, bar(), steps, tried, settled, apart);
        assume(steps);
        note(steps, tried);
        Set<String> read = new LinkedHashSet<>(recordedTraits());
        steps.forEach(one -> read.addAll(looked(one.worth().step())));
        read.retainAll(recorded.model().visibleTraits());
        RecordBasis rests = recorded.basis(read, true);
        Answers answers = basis.answers();
        return new TellApartAnswer(
                "What can be done next to tell "
                        + all.stream().map(one -> "\"" + one.name() + "\"").collect(Collectors.joining(" from "))
                        + "?",
                verdict.words(),
                verdict.decided(),
                given(traits),
                models,
                excluded,
                bar(),
                steps,
                tried,
                leftOut,
                apart,
                new ArrayList<>(taken.values()),
                Answers.rivals(rests.evidence()),
                cautions(steps),
                rests.evidence(),
                answers.compiled().model().reference(),
                new Reference(pedigree.id(), pedigree.version(), Optional.empty()),
                new ArrayList<>(notices));
    }

    private double bar() {
        return ComparedModels.bar(ComparedModels.USUAL_RISK, all.size() - 1);
    }

    private static List<String> looked(Step step) {
        return step instanceof Step.Look look
                ? look.traits()
                : step instanceof Step.Kits kits ? kits.traits() : List.of();
    }

    private Set<String> recordedTraits() {
        Set<String> seen = new LinkedHashSet<>();
        pedigree.individuals().values().forEach(one -> one.observations().forEach(look -> seen.addAll(look.traits())));
        return seen;
    }

    private List<OfModel> models() {
        List<OfModel> models = new ArrayList<>();
        double whole =
                candidates.stream().mapToDouble(one -> one.prior().toDouble()).sum();
        for (int m = 0; m < candidates.size(); m++) {
            Candidate one = candidates.get(m);
            int at = m;
            models.add(new OfModel(
                    one.name(),
                    one.model().reference(),
                    compared.map(by -> by.log(at) - by.log(0)).orElse(0.0),
                    compared.map(by -> by.posteriors().get(at))
                            .orElse(whole > 0 ? one.prior().toDouble() / whole : 0)));
        }
        return models;
    }

    private List<String> given(List<String> traits) {
        List<String> given = new ArrayList<>();
        int animals = pedigree.individuals().size();
        int litters = pedigree.litters().size();
        given.add(animals + (animals == 1 ? " animal" : " animals") + " and " + litters
                + (litters == 1 ? " litter" : " litters") + " of " + pedigree);
        if (!traits.isEmpty()) {
            given.add("traits looked at: " + String.join(", ", traits));
        }
        if (!question.stage().equals(LifeStage.unstated())) {
            given.add("stage of the looks: " + question.stage());
        }
        question.planned().forEach(couple -> given.add("planned mating: " + couple));
        given.add(
                question.newMatings()
                        ? "matings made for this alone are worked out, too"
                        : "no mating is worked out that is not planned in any case");
        question.inSpiteOf().forEach(one -> given.add("in spite of: " + one));
        return given;
    }

    private void assume(List<ApartStep> steps) {
        take(
                "one-is-true",
                "One of these models is true.",
                "If none is, what tells them apart favours the one that is less wrong; ask how well it goes with the litters.");
        if (steps.stream().anyMatch(one -> one.worth().step() instanceof Step.Test)) {
            take(
                    "test-error",
                    "A DNA test is never wrong, and tells all genotypes of its locus apart.",
                    "Every test is wrong now and then; ask the laboratory how often.");
        }
        if (steps.stream().anyMatch(one -> one.worth().step() instanceof Step.Kits)) {
            take(
                    "kits-live",
                    "Kits that are counted are such as live to be looked at.",
                    "For kits that do not, more are born.");
        }
        if (steps.stream()
                .anyMatch(one -> one.worth().numbers().stream().anyMatch(number -> number.design() == Design.JILLS))) {
            take(
                    "jills-alike",
                    "Several jills are known as well as the one named, stand to the sire as she does, and carry what they carry"
                            + " independently of one another.",
                    "Sisters carry alike; what they tell is less than what unrelated jills do.");
        }
    }

    private void take(String id, String text, String otherwise) {
        taken.put(id, new Assumption(id, text, otherwise));
    }

    private void note(List<ApartStep> steps, List<TellApartAnswer.Tried> tried) {
        if (steps.stream().anyMatch(one -> one.worth().step().effort() == Effort.DNA_TEST)) {
            notices.add(
                    "whether any laboratory offers such a test is not known here; ask a veterinarian or a laboratory");
        }
        if (question.planned().isEmpty() && !question.newMatings() && !candidates.isEmpty()) {
            notices.add(
                    "matings were not asked about; those that are planned in any case can be named, to see what their kits would say");
        }
        if (steps.stream().anyMatch(one -> one.worth().step().effort().breeds())) {
            candidates.forEach(this::lost);
        }
        if (tried.stream().anyMatch(one -> one.effort().breeds())) {
            notices.add("whether an animal is alive, well and old enough to be mated is not in these records");
        }
        notices.add(Judging.NO_ADVICE);
    }

    /** What one of the models, not only that in use, says of young that die. */
    private void lost(Candidate one) {
        one.model().viability().values().stream()
                .filter(loss -> !loss.birth().isOne() || !loss.scored().isOne())
                .forEach(loss -> notices.add("by \"" + one.name() + "\" young that are "
                        + String.join(" or ", loss.expressions()) + " at locus " + loss.locus()
                        + " may be lost before they are looked at, and no mating is to be made to find that out"));
    }

    private List<Caution> cautions(List<ApartStep> steps) {
        List<Phenotype> looks = Judging.looks(pedigree);
        Answers answers = basis.answers();
        Map<String, Caution> due = new LinkedHashMap<>();
        answers.cautions(Situation.of(QuestionKind.HYPOTHESIS.word())
                        .with(Role.OFFSPRING, looks)
                        .with(Role.ANIMAL, looks))
                .forEach(one -> due.putIfAbsent(one.id(), one));
        if (steps.stream().anyMatch(one -> one.worth().step() instanceof Step.Test)) {
            answers.cautions(Situation.of(QuestionKind.CARRIERS.word())).forEach(one -> due.putIfAbsent(one.id(), one));
        }
        raised.forEach(one -> due.putIfAbsent(one.id(), one));
        return new ArrayList<>(due.values());
    }
}
