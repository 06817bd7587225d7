package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.TestMate;
import org.geneticsrules.answer.TestMatingQuestion;
import org.geneticsrules.answer.TestResult;
import org.geneticsrules.answer.recorded.HowSure.Course;
import org.geneticsrules.answer.recorded.HowSure.Row;
import org.geneticsrules.answer.recorded.PlannedMating.Run;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.View;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Phenotype;

/** Puts the three kinds of sure together. */
final class HowSureAnswer {

    private final Ground ground;
    private final HowSureQuestion question;
    private final PlannedMating mating;
    private final List<String> traits;
    private final Set<Phenotype> signs;
    private final Observation clear;
    private final Set<String> loci;
    private final Draft draft;

    HowSureAnswer(Ground ground, HowSureQuestion question) {
        this.ground = ground;
        this.question = question;
        this.mating = PlannedMating.of(ground, question.animal(), question.mate());
        this.draft = new Draft(ground);
        this.signs = question.signs().isEmpty() ? proofs() : question.signs();
        signs.forEach(ground.model().catalogue()::check);
        this.traits = List.copyOf(signs.iterator().next().traits());
        View view = new View(traits, question.stage(), Census.CONCEIVED);
        ground.compiled().diagram(view); // refuses a stage that lacks what the traits depend on
        Set<Phenotype> others = PlannedMating.others(ground, traits, signs);
        if (others.isEmpty()) {
            throw new ProblemsException(Problem.of(
                            Stage.MEANING,
                            "no-other-look",
                            "",
                            "every look would be a sign, so no kit could be without one")
                    .expecting("looks that some kits do not have"));
        }
        this.clear = new Observation(Optional.empty(), question.stage(), others);
        Set<String> matter = new LinkedHashSet<>(List.of(question.allele().locus()));
        matter.addAll(ground.compiled().lociRead(view));
        this.loci = ImmutableSet.copyOf(matter);
    }

    /** The looks of kits that prove the allele, whatever else the animal and its mate carry. */
    private Set<Phenotype> proofs() {
        Animal any = Animal.unknown(ground.compiled()).ofSex(mating.sexOf(question.animal()));
        Animal mate = OwnRecords.of(ground.compiled(), mating.kindred().individual(question.mate()));
        Answer tests = ground.answers()
                .testMatings(TestMatingQuestion.of(any)
                        .carrying(List.of(question.allele()))
                        .by(List.of(TestMate.of("the mate", mate)))
                        .at(question.stage())
                        .inSpiteOf(excluding()));
        Optional<TestResult> told =
                tests.tests().stream().filter(test -> !test.signs().isEmpty()).findFirst();
        if (told.isEmpty()) {
            throw new ProblemsException(Problem.of(
                            Stage.MEANING,
                            "sign-needed",
                            "",
                            "no look of " + ground.answers().young().any() + " by this mate proves "
                                    + question.allele().words() + " by itself")
                    .expecting("the look that is to count as its sign"));
        }
        return told.get().signs();
    }

    /** Here nothing is proposed, so nothing is left out either; what has to be said is said of the mating itself. */
    private List<String> excluding() {
        List<String> names = new ArrayList<>(ground.answers().excludingCautions());
        names.add(TestResult.LOST_YOUNG);
        return names;
    }

    RecordedAnswer answer() {
        List<Weighed<Conclusions>> weighed =
                ground.weigh(mating.kindred(), inference -> inference.conclude(loci), draft.notices);
        List<Course> courses =
                weighed.stream().map(one -> course(one.origin(), one.found())).toList();
        HowSure found = new HowSure(question.animal(), question.mate(), question.allele(), signs, courses);
        mating.tell(draft, traits);
        draft.rest(mating.kindred(), loci, weighed.stream().map(Weighed::origin).toList());
        draft.statements.addAll(Kits.statements(ground.compiled(), traits, question.stage()));
        draft.notices(mating.kindred(), ground.inference(mating.kindred()).notices());
        draft.taken.add(
                "every-kit-looked-at",
                "Every one of the " + ground.answers().young().many()
                        + " is looked at, and none is left out because it looked inconvenient.",
                "One that shows a sign and is not recorded undoes all three numbers.");
        if (courses.isEmpty()) {
            draft.undecided();
        }
        if (courses.stream().anyMatch(one -> one.now().standing() == Standing.CONTRADICTED)) {
            draft.conflicts(mating.kindred(), ground.inference(mating.kindred()).contradictions());
        }
        return draft.answer(
                "how sure",
                "How sure may one be whether " + RecordWords.quoted(question.animal()) + " carries "
                        + question.allele().words() + ", by "
                        + ground.answers().young().many() + " of " + RecordWords.quoted(question.mate()) + "?",
                verdict(found),
                found);
    }

    private Course course(Origin origin, Conclusions now) {
        ImmutableList.Builder<Row> rows = ImmutableList.builder();
        Chance before = carries(now);
        draft.settled(before.standing());
        for (int kits = 1; kits <= question.kits(); kits++) {
            rows.add(row(origin, kits));
        }
        return new Course(origin, before, rows.build());
    }

    private Chance carries(Conclusions found) {
        return Chance.carries(found, question.animal(), question.allele());
    }

    /** By Bayes' rule, P(none shows | carries) = P(carries | none shows) P(none shows) / P(carries). */
    private Row row(Origin origin, int kits) {
        Run unseen = mating.suppose(origin, Collections.nCopies(kits, Optional.empty()), loci);
        Run none = mating.suppose(origin, Collections.nCopies(kits, Optional.of(clear)), loci);
        if (unseen.standing() != Standing.EXACT) {
            Chance open = Chance.unsettled(unseen.standing());
            draft.settled(open.standing());
            return new Row(kits, open, open, open);
        }
        Chance clearKits = PlannedMating.ratio(unseen, none);
        Chance before = carries(unseen.found());
        Chance after = carries(none.found());
        draft.settled(clearKits.standing());
        if (!clearKits.isSettled() || !before.isSettled()) {
            Chance open = Chance.unsettled(clearKits.standing());
            return new Row(kits, open, open, open);
        }
        double p = clearKits.value().orElseThrow();
        double prior = before.value().orElseThrow();
        // where the animal cannot carry it, there is nothing to detect; where no litter is clear, nothing is left to
        // believe
        Chance detected = prior == 0
                ? Chance.unsettled(Standing.CONTRADICTED)
                : Chance.exact(p == 0 ? 1 : 1 - after.value().orElseThrow() * p / prior);
        return new Row(kits, detected, p == 0 ? Chance.unsettled(Standing.CONTRADICTED) : after, Chance.exact(1 - p));
    }

    private String verdict(HowSure found) {
        String who = RecordWords.quoted(question.animal());
        String allele = question.allele().words();
        if (found.courses().stream().anyMatch(one -> one.now().standing() == Standing.CONTRADICTED)) {
            return "The records of " + who + ", " + RecordWords.quoted(question.mate())
                    + " and their relatives cannot all be true under this model, so that no chance follows from all of them"
                    + " together. Re-examine the records named, or the model.";
        }
        List<Chance> now = found.courses().stream().map(Course::now).toList();
        if (now.stream().noneMatch(Chance::isSettled)) {
            return found.courses().isEmpty()
                    ? "How likely " + who + " is to carry " + allele + " cannot be said without frequencies."
                    : "How likely " + who + " is to carry " + allele
                            + " was not calculated: too much ties its relatives together.";
        }
        int last = question.kits();
        List<Row> rows =
                found.courses().stream().map(one -> one.rows().get(last - 1)).toList();
        String many = last + " " + ground.answers().young().of(last);
        String sign = signs.stream().map(Object::toString).collect(Collectors.joining(" or "));
        return "Now " + who + " carries " + allele + " with a chance of"
                + MayCarryAnswer.range(now).substring(1) + ". Of " + many + " by "
                + RecordWords.quoted(question.mate()) + " at least one would show " + sign + " with a chance of"
                + told(rows.stream().map(Row::detected).toList()) + " if it carries it, and with a chance of"
                + told(rows.stream().map(Row::atLeastOne).toList())
                + " by what is known now; if none does, it still carries it with a chance of"
                + told(rows.stream().map(Row::carries).toList()) + ".";
    }

    private static String told(List<Chance> chances) {
        String range = MayCarryAnswer.range(chances);
        return range.isEmpty() ? " (not to be said)" : range.substring(1);
    }
}
