package org.geneticsrules.answer.described;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.Assumption;
import org.geneticsrules.answer.EvidenceLevel;
import org.geneticsrules.answer.RivalModel;
import org.geneticsrules.answer.RivalVerdict;
import org.geneticsrules.answer.described.Description.Fit;
import org.geneticsrules.answer.described.Description.Open;
import org.geneticsrules.answer.described.Description.Reading;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;
import org.geneticsrules.trait.Trait;

/** Puts one description together. */
final class Describing {

    private final Answers answers;
    private final Model model;
    private final DescribeQuestion question;
    private final List<Reading> readings;
    private final Set<String> notices = new LinkedHashSet<>();
    private final OneAnimal together;

    Describing(Answers answers, DescribeQuestion question) {
        this.answers = answers;
        this.model = answers.compiled().model();
        this.question = question;
        this.readings = readings();
        this.together = new OneAnimal(answers.compiled(), question.sex(), readings, notices);
    }

    DescribedAnswer answer() {
        Description found = new Description(
                readings, new Courses(model.catalogue(), readings).list(), together.apart(), together.fit(), open());
        EvidenceLevel evidence = answers.evidence(together.statements(), List.of());
        List<Caution> cautions = new ArrayList<>(answers.cautions(QuestionKind.DESCRIPTION, this::mayShow));
        String verdict = verdict(together.fit(), together.apart());
        List<RivalVerdict> otherwise = together.fit() == Fit.NOT_FOUND_OUT
                ? List.of()
                : answers.rivalVerdicts(verdict, this::opinion, notices, cautions);
        return new DescribedAnswer(
                "What was seen of this animal, and can all of it be one animal?",
                verdict,
                given(),
                found,
                assumptions(),
                otherwise,
                Answers.rivals(evidence),
                cautions,
                evidence,
                model.reference(),
                new ArrayList<>(notices));
    }

    /** What a rival says, if it makes a claim about whatever this model makes one about. */
    private RivalModel.Opinion opinion(Answers other) {
        Animal.requireClaims(
                readings.stream()
                        .filter(one -> one.unruled().isEmpty() && one.counts())
                        .map(Reading::trait)
                        .toList(),
                other.compiled().model());
        DescribedAnswer answer = new Describing(other, question).answer();
        Fit fit = answer.description().fit();
        // which readings it finds hard to believe is no other verdict
        String said = fit == together.fit() ? verdict(fit, together.apart()) : answer.verdict();
        return new RivalModel.Opinion(said, fit != Fit.NOT_FOUND_OUT, answer::cautions);
    }

    private List<Reading> readings() {
        Catalogue catalogue = model.catalogue();
        List<Problem> problems = new ArrayList<>();
        List<Reading> found = new ArrayList<>();
        for (Sighting seen : question.sightings()) {
            try {
                LifeStage stage = catalogue.check(seen.stage());
                seen.light().ifPresent(catalogue::checkLight);
                catalogue
                        .check(seen.look())
                        .asMap()
                        .forEach((trait, state) -> found.add(reading(stage, seen.light(), trait, state)));
            } catch (ProblemsException e) {
                e.problems().stream().filter(one -> !problems.contains(one)).forEach(problems::add);
            }
        }
        if (!problems.isEmpty()) {
            throw new ProblemsException(problems);
        }
        return found;
    }

    private Reading reading(LifeStage stage, Optional<String> light, String id, String state) {
        Trait trait = model.catalogue().trait(id).orElseThrow();
        return new Reading(
                stage,
                light,
                id,
                state,
                trait.judgeable(stage) == Judgeable.NO ? trait.judgeableFrom() : Optional.empty(),
                trait.judgeable(light) == Judgeable.NO ? trait.judgeableIn() : List.of(),
                model.visibleTraits().contains(id)
                        ? Optional.empty()
                        : Optional.of(model.notModelled().getOrDefault(id, "The model has no rule for it.")),
                trait.note());
    }

    private String verdict(Fit fit, List<Reading> apart) {
        List<Reading> last = Description.last(readings);
        String seen = last.isEmpty()
                ? "Nothing that was seen counts: it was read too early, or in a light in which it cannot be told."
                : "The animal shows "
                        + last.stream()
                                .map(one -> one.trait() + " " + one.state())
                                .collect(Collectors.joining(", "))
                        + ".";
        boolean every =
                readings.stream().allMatch(one -> one.counts() && one.unruled().isEmpty());
        long looks = readings.stream().map(Reading::stage).distinct().count();
        String all = !every
                ? "All of it that the model can judge"
                : looks == 1 ? "All of it" : looks == 2 ? "Both looks" : "All " + looks + " looks";
        return seen
                + switch (fit) {
                    case ONE_ANIMAL -> " " + all + " can be of one animal under this model.";
                    case NOT_ONE_ANIMAL ->
                        " No one animal shows all of it under this model: "
                                + apart.stream().map(Reading::toString).collect(Collectors.joining(" and "))
                                + (apart.size() == 1 ? " does not occur." : " do not go together.")
                                + " A look may have been misread, or be of another animal, or the model may be mistaken.";
                    case NO_CLAIM -> "";
                    case NOT_FOUND_OUT -> " Whether all of it can be of one animal is not found out.";
                };
    }

    private List<String> given() {
        List<String> given = new ArrayList<>();
        question.sex().ifPresent(sex -> given.add(sex.word()));
        question.sightings().forEach(seen -> given.add("look " + seen));
        return given;
    }

    private List<Assumption> assumptions() {
        Map<String, Assumption> made = new LinkedHashMap<>();
        if (together.fit() != Fit.NO_CLAIM) {
            made.put(
                    "model",
                    new Assumption(
                            "model",
                            "The rules of model " + model + " hold.",
                            "Another model of the same traits may answer otherwise; \"impossible\" means impossible under this"
                                    + " model."));
        }
        made.put(
                "recorded-looks",
                new Assumption(
                        "recorded-looks",
                        "Each look was read rightly, and is of this animal.",
                        "A misread coat, or two animals taken for one, makes what follows say nothing."));
        Set<String> taken = readings.stream()
                .filter(one -> model.catalogue().judgeable(one.trait(), one.stage()) == Judgeable.UNKNOWN)
                .map(Reading::trait)
                .collect(Collectors.toCollection(LinkedHashSet::new));
        if (!taken.isEmpty()) {
            made.put(
                    "told-in-time",
                    new Assumption(
                            "told-in-time",
                            "The animal was old enough for " + String.join(", ", taken) + " to be told.",
                            "What is read earlier says nothing; state the age or the moult."));
        }
        Set<String> lit = readings.stream()
                .filter(one ->
                        model.catalogue().trait(one.trait()).orElseThrow().judgeable(one.light()) == Judgeable.UNKNOWN)
                .map(Reading::trait)
                .collect(Collectors.toCollection(LinkedHashSet::new));
        if (!lit.isEmpty()) {
            made.put(
                    "told-in-its-light",
                    new Assumption(
                            "told-in-its-light",
                            "The light was good enough for " + String.join(", ", lit) + " to be told.",
                            "What is read in another light says nothing; state the light."));
        }
        return new ArrayList<>(made.values());
    }

    private List<Open> open() {
        Set<String> known = readings.stream()
                .filter(Reading::counts)
                .map(Reading::trait)
                .collect(Collectors.toCollection(LinkedHashSet::new));
        LifeStage latest =
                question.sightings().get(question.sightings().size() - 1).stage();
        return model.catalogue().traits().values().stream()
                .filter(trait -> !known.contains(trait.id()))
                .map(trait -> new Open(
                        trait.id(),
                        trait.judgeable(latest) == Judgeable.YES ? Optional.empty() : trait.judgeableFrom(),
                        trait.judgeableIn(),
                        trait.note()))
                .toList();
    }

    /** Whether at one look something of a condition was seen, and nothing against it. */
    private boolean mayShow(Condition look) {
        return question.sightings().stream().map(Sighting::look).anyMatch(seen -> shows(seen, look));
    }

    private static boolean shows(Phenotype seen, Condition look) {
        return look.names().stream().anyMatch(seen.traits()::contains)
                && look.variables().entrySet().stream()
                        .allMatch(one -> seen.state(one.getKey())
                                .map(one.getValue()::allows)
                                .orElse(true));
    }
}
