package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.cross.Parent;
import org.geneticsrules.cross.UncertainCross;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.explanation.MatingExplanation;
import org.geneticsrules.explanation.Reason;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Population;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;

/** Puts one answer about a mating together. */
final class MatingAnswer {

    private static final String REASONS_BEFORE =
            "the reasons and hidden loci are those of a first kit; the chances take the kits already seen into account";

    private final Answers answers;
    private final CompiledModel compiled;
    private final MatingQuestion question;
    private final List<String> traits;
    private final UncertainCross cross;
    private final List<Sighting> seen;
    private final List<String> notices = new ArrayList<>();

    MatingAnswer(Answers answers, MatingQuestion question) {
        this.answers = answers;
        this.compiled = answers.compiled();
        this.question = question;
        Set<String> asked = new LinkedHashSet<>(question.traits());
        question.event().ifPresent(event -> asked.addAll(event.traits()));
        this.traits = answers.traits(asked);
        this.cross = UncertainCross.of(
                compiled, question.sire().parent(), question.dam().parent());
        checkQuestion();
        this.seen =
                question.seen().stream().map(this::evident).map(Sighting::of).toList();
    }

    /** What of a kit's look is evidence: the traits the model rules. */
    private Phenotype evident(Phenotype kit) {
        Set<String> ruled = answers.model().visibleTraits();
        for (String trait : kit.traits()) {
            String notice = "the look \"" + trait + "\" of a kit seen says nothing here: the model has no rule for it";
            if (!ruled.contains(trait) && !notices.contains(notice)) {
                notices.add(notice);
            }
        }
        return kit.restrictedTo(ruled);
    }

    Answer answer() {
        notices.addAll(question.sire().notices());
        notices.addAll(question.dam().notices());
        if (cross.isContradictory()) {
            return contradiction();
        }
        return cross.missingFrequencies(traits).isEmpty() ? weighted() : unweighted();
    }

    private void checkQuestion() {
        question.event().ifPresent(event -> answers.model().catalogue().check(event));
        question.seen().forEach(kit -> answers.model().catalogue().check(kit));
        Problems problems = new Problems(Stage.MEANING);
        if (question.litter().isPresent() && question.event().isEmpty()) {
            problems.add("litter-without-look", "", "a litter was asked about, but no look to count in it", "a look");
        }
        if (question.litter().filter(kits -> kits < 1 || kits > 30).isPresent()) {
            problems.add(
                    "litter-size",
                    "",
                    "a litter of " + question.litter().orElseThrow() + " kits was asked about",
                    "1 to 30");
        }
        problems.throwIfAny();
    }

    /** All that matters about the parents is known, or weighted by populations of their own. */
    private Answer weighted() {
        Optional<MatingExplanation> explanation = cross.explain(traits);
        if (explanation.isEmpty()) {
            return weightless();
        }
        MatingExplanation reasons = explanation.get();
        Optional<Distribution<Phenotype>> given = looks(cross);
        if (given.isEmpty()) {
            return impossibleKits();
        }
        Distribution<Phenotype> looks = given.get();
        List<Population> used = populationsUsed();
        Optional<Probability> chance = Optional.empty();
        Optional<Litter> litter = Optional.empty();
        String verdict = Verdicts.ratio(looks, question.seen());
        if (question.event().isPresent()) {
            Phenotype event = question.event().get();
            Probability next = cross.next(event, seen).orElseThrow();
            chance = Optional.of(next);
            litter = litter(cross, event);
            verdict = Verdicts.chance(event, next, question.seen());
        }
        List<Outcome> outcomes = new ArrayList<>();
        looks.asMap().forEach((look, p) -> outcomes.add(new Outcome(look, Optional.of(p), ImmutableSet.of())));
        if (!seen.isEmpty()) {
            notices.add(REASONS_BEFORE);
        }
        List<Reason> because = new ArrayList<>(reasons.cases());
        because.addAll(reasons.ways());
        EvidenceLevel evidence = answers.evidence(reasons.statements(), used);
        return assemble(
                verdict,
                Status.EXACT,
                chance,
                because,
                outcomes,
                litter,
                ImmutableList.of(),
                reasons.hidden(),
                evidence,
                used);
    }

    /** Frequencies are missing: what is possible, and what is probable under each population of the model. */
    private Answer unweighted() {
        Set<Phenotype> looks = cross.possible(traits);
        List<Outcome> outcomes = new ArrayList<>();
        for (Phenotype look : looks) {
            outcomes.add(new Outcome(look, Optional.empty(), chances(look)));
        }
        if (!seen.isEmpty()) {
            outcomes.removeIf(outcome -> outcome.chances().stream().allMatch(Probability::isZero));
            if (outcomes.isEmpty()) {
                return impossibleKits();
            }
        }
        String verdict = question.event()
                .map(event -> Verdicts.possible(event, cross.possibleChances(View.of(event.traits()), event, seen)))
                .orElseGet(() -> Verdicts.possible(
                        outcomes.stream().map(Outcome::phenotype).toList()));
        List<Weighting> weightings = new ArrayList<>();
        Set<String> statements = new LinkedHashSet<>();
        List<Reason> because = new ArrayList<>();
        List<Hidden> hidden = new ArrayList<>();
        List<Population> used = populationsUsed();
        for (Population population : answers.model().populations().values()) {
            UncertainCross assumed = UncertainCross.of(
                    compiled, withDefault(question.sire(), population), withDefault(question.dam(), population));
            if (!assumed.missingFrequencies(traits).isEmpty()) {
                notices.add(
                        "population \"" + population.id() + "\" names no frequencies for all loci that matter here");
                continue;
            }
            used.add(population);
            weightings.add(new Weighting(
                    population,
                    looks(assumed),
                    question.event().flatMap(event -> assumed.next(event, seen)),
                    question.event().flatMap(event -> litter(assumed, event))));
            assumed.explain(traits).ifPresent(reasons -> {
                statements.addAll(reasons.statements());
                if (because.isEmpty()) {
                    because.addAll(reasons.cases());
                    because.addAll(reasons.ways());
                    hidden.addAll(reasons.hidden());
                    if (!seen.isEmpty()) {
                        notices.add(REASONS_BEFORE);
                    }
                    notices.add("reasons and hidden loci are shown for population \"" + population.id() + "\"");
                }
            });
        }
        if (weightings.isEmpty()) {
            notices.add("no population of the model has the frequencies that a weighted answer needs");
        }
        EvidenceLevel evidence = answers.evidence(statements, used);
        return assemble(
                verdict,
                weightings.isEmpty() ? Status.UNDECIDED : Status.EXACT,
                Optional.empty(),
                because,
                outcomes,
                Optional.empty(),
                weightings,
                hidden,
                evidence,
                used);
    }

    private Set<Probability> chances(Phenotype look) {
        try {
            return cross.possibleChances(View.of(traits), look, seen);
        } catch (TooLargeException e) {
            if (notices.stream().noneMatch(notice -> notice.startsWith("the chances each look may have"))) {
                notices.add("the chances each look may have are not listed: " + e.getMessage());
            }
            return ImmutableSet.of();
        }
    }

    /** What the next kit may show, in the light of the kits seen already. */
    private Optional<Distribution<Phenotype>> looks(UncertainCross parents) {
        Optional<Distribution<Phenotype>> before = parents.probable(traits);
        if (seen.isEmpty() || before.isEmpty()) {
            return before;
        }
        Map<Phenotype, Probability> after = new LinkedHashMap<>();
        for (Phenotype look : before.get().outcomes()) {
            parents.next(View.of(traits), look, seen).ifPresent(chance -> after.put(look, chance));
        }
        return after.isEmpty() ? Optional.empty() : Optional.of(Distribution.of(after));
    }

    private Optional<Litter> litter(UncertainCross parents, Phenotype event) {
        return question.litter()
                .flatMap(kits -> parents.count(event, kits, seen).map(counts -> new Litter(kits, counts)));
    }

    private static Parent withDefault(Animal animal, Population population) {
        return animal.population().isPresent()
                ? animal.parent()
                : animal.parent().from(population);
    }

    /** The populations that weigh something: those named for parents that are uncertain where it matters. */
    private List<Population> populationsUsed() {
        Set<String> read = compiled.lociRead(traits);
        List<Population> used = new ArrayList<>();
        for (Animal parent : List.of(question.sire(), question.dam())) {
            if (!parent.uncertain(read).isEmpty()) {
                parent.population()
                        .filter(population -> !used.contains(population))
                        .ifPresent(used::add);
            }
        }
        return used;
    }

    private Answer contradiction() {
        String who = question.sire().genotypes().isEmpty() ? "sire" : "dam";
        return undecided("What is stated of the " + who
                + " contradicts itself under this model: no genotype has that look and those alleles."
                + " Re-examine the record, or the model.");
    }

    private Answer impossibleKits() {
        return undecided(
                "The kits already seen cannot all be kits of these parents under this model. Re-examine their looks, the"
                        + " parents' records, or the model.");
    }

    private Answer weightless() {
        return undecided(
                "What is stated of a parent has no weight in the population named: an allele it must carry is given frequency 0"
                        + " there.");
    }

    private Answer undecided(String verdict) {
        return assemble(
                verdict,
                Status.UNDECIDED,
                Optional.empty(),
                ImmutableList.of(),
                ImmutableList.of(),
                Optional.empty(),
                ImmutableList.of(),
                ImmutableList.of(),
                EvidenceLevel.of(ImmutableList.of()),
                populationsUsed());
    }

    private Answer assemble(
            String verdict,
            Status status,
            Optional<Probability> probability,
            List<Reason> because,
            List<Outcome> outcomes,
            Optional<Litter> litter,
            List<Weighting> weightings,
            List<Hidden> hidden,
            EvidenceLevel evidence,
            List<Population> used) {
        Assumptions assumptions = new Assumptions()
                .model(answers.model())
                .mating(compiled.lociRead(traits).size())
                .omitted("sire", question.sire())
                .omitted("dam", question.dam());
        used.forEach(assumptions::weighting);
        List<String> given = new ArrayList<>();
        describe("sire", question.sire(), given);
        describe("dam", question.dam(), given);
        question.seen().forEach(kit -> given.add("kit seen: " + kit));
        given.add("relation of the parents: " + question.relation().word());
        return new Answer(
                new Question("mating", text(), traits, question.event(), question.seen()),
                verdict,
                status,
                probability,
                given,
                assumptions.list(),
                because,
                outcomes,
                litter,
                weightings,
                hidden,
                Answers.rivals(evidence),
                cautions(),
                evidence,
                answers.model().reference(),
                notices);
    }

    private static void describe(String role, Animal animal, List<String> given) {
        if (animal.given().isEmpty()) {
            given.add(role + ": nothing stated");
        }
        animal.given().forEach(fact -> given.add(role + ": " + fact));
    }

    private String text() {
        String traitWords = question.traits().isEmpty() && question.event().isEmpty()
                ? "all traits the model rules"
                : String.join(", ", traits);
        return question.event()
                .map(event ->
                        "How likely is a kit of this mating to show " + Verdicts.words(event, event.traits()) + "?")
                .orElse("What may the kits of this mating show in " + traitWords + "?");
    }

    /** Raised by every look that may occur or was seen, also in traits that were not asked for. */
    private List<Caution> cautions() {
        Situation situation = Situation.of("mating").with(question.relation());
        for (Animal parent : List.of(question.sire(), question.dam())) {
            situation = situation.with(
                    Role.PARENT,
                    answers.cautionLooks(
                            parent.looks(), named -> PossibleLooks.of(compiled, parent.genotypes(), named)));
        }
        for (Phenotype kit : question.seen()) {
            situation = situation.with(Role.OFFSPRING, answers.cautionLooks(kit, named -> kits(kit, named)));
        }
        return answers.cautions(situation.with(
                Role.OFFSPRING,
                answers.cautionLooks(Phenotype.unspecified(), named -> kits(Phenotype.unspecified(), named))));
    }

    /** The looks of kits that do not contradict what was seen of one. */
    private Set<Phenotype> kits(Phenotype seen, List<String> named) {
        return cross.isContradictory()
                ? ImmutableSet.of()
                : cross.possible(named).stream()
                        .filter(look -> look.restrictedTo(seen.traits()).equals(seen.restrictedTo(look.traits())))
                        .collect(ImmutableSet.toImmutableSet());
    }
}
