package org.geneticsrules.answer.recorded;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.recorded.DnaTest.Belief;
import org.geneticsrules.answer.recorded.DnaTest.Cause;
import org.geneticsrules.answer.recorded.DnaTest.OfGenotype;
import org.geneticsrules.answer.recorded.DnaTest.Report;
import org.geneticsrules.answer.recorded.LookNext.Information;
import org.geneticsrules.answer.recorded.LookNext.Whether;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.inference.Possibility;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Statement;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Kindreds;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Sex;

/**
 * Puts together what a DNA test would tell: each report is put into the pedigree as if the test had been made, so that its error, earlier
 * tests and relatives count as they do in every other answer.
 */
final class DnaTestAnswer {

    private final Ground ground;
    private final DnaTestQuestion question;
    private final String animal;
    private final Locus locus;
    private final Set<String> at;
    private final Pedigree kindred;
    private final Individual recorded;
    private final List<AllelePair> pairs;
    private final Draft draft;

    DnaTestAnswer(Ground ground, DnaTestQuestion question) {
        this.ground = ground;
        this.question = question;
        this.animal = question.animal();
        this.locus = ground.model().locus(question.locus());
        this.at = ImmutableSet.of(locus.id());
        this.kindred = Kindreds.of(ground.pedigree()).around(List.of(animal));
        this.recorded = kindred.individual(animal);
        this.pairs = pairs(PlannedMating.sex(kindred, animal));
        this.draft = new Draft(ground);
    }

    /** The genotypes that may be reported: those of its sex. */
    private List<AllelePair> pairs(Optional<Sex> sex) {
        List<AllelePair> all = sex.map(locus::pairs).orElseGet(locus::pairs);
        if (all.stream().anyMatch(pair -> pair.alleles().isEmpty())) {
            String who = RecordWords.quoted(animal);
            throw new ProblemsException(Problem.of(
                            Stage.MEANING,
                            "nothing-to-test",
                            "",
                            sex.isPresent()
                                    ? who + " is " + sex.get().word() + " and has no allele at locus " + locus.id()
                                    : "the sex of " + who
                                            + " is not known, and animals of one sex have no allele at locus "
                                            + locus.id())
                    .expecting(sex.isPresent() ? "another locus" : "a record of its sex"));
        }
        return all;
    }

    RecordedAnswer answer() {
        List<Weighed<Supposed>> weighed = ground.weigh(
                origin -> new Supposed(ground.inference(kindred, origin), kindred, animal, at), draft.notices);
        List<Origin> origins = weighed.stream().map(Weighed::origin).toList();
        List<Supposed> supposed = weighed.stream().map(Weighed::found).toList();
        Inference records = ground.inference(kindred);
        boolean contradicted = supposed.stream().anyMatch(one -> !one.before().isConsistent())
                || Fits.of(ground.model(), records, animal, at) == Whether.EXCLUDED;
        Belief before = new Belief(List.of(), List.of());
        List<Report> reports = new ArrayList<>();
        List<Information> tells = new ArrayList<>();
        if (contradicted) {
            draft.undecided();
            draft.conflicts(kindred, records.contradictions());
        } else {
            before = belief(
                    records,
                    supposed.stream().map(one -> Optional.of(one.before())).toList());
            Map<Supposed, Gained> gained = new LinkedHashMap<>();
            supposed.forEach(one -> gained.put(one, new Gained(animal, locus.id(), one.before())));
            pairs.forEach(pair -> report(pair, gained).ifPresent(reports::add));
            gained.values().forEach(one -> tells.add(one.bits()));
            tells.forEach(one -> draft.settled(one.standing()));
        }
        List<Statement> support = support();
        DnaTest found = new DnaTest(
                animal,
                locus.id(),
                question.allele(),
                question.error(),
                cause(support),
                support,
                origins,
                tells,
                before,
                reports);
        complete(found);
        return draft.answer("dna test", asked(), new DnaTestWords(found).verdict(contradicted), found);
    }

    private String asked() {
        return "What would a DNA test of " + RecordWords.quoted(animal) + " at " + locus.id() + " tell"
                + question.allele()
                        .map(one -> ", to find out whether it carries " + one.words())
                        .orElse("")
                + (question.error().isZero() ? "" : ", if it is wrong in " + question.error() + " of cases")
                + "?";
    }

    private Individual tested(AllelePair pair) {
        return recorded.with(GenotypeTest.of(pair, question.error()));
    }

    /** One report; none if it cannot be, by a changed allele neither. */
    private Optional<Report> report(AllelePair pair, Map<Supposed, Gained> gained) {
        Inference records = ground.inference(Supposed.put(kindred, tested(pair)));
        List<Chance> chances = new ArrayList<>();
        List<Optional<Conclusions>> after = new ArrayList<>();
        gained.forEach((one, tells) -> {
            if (one.standing(at) == Standing.EXACT) {
                Supposed.Then then = one.with(tested(pair), at);
                tells.by(then);
                chances.add(then.likely());
                after.add(Optional.of(then.found()).filter(found -> then.standing() != Standing.CONTRADICTED));
            } else {
                tells.by(one.standing(at));
                chances.add(Chance.unsettled(Standing.TOO_LARGE)); // an estimate has no likelihood
                after.add(Optional.empty());
            }
        });
        boolean never = chances.stream().allMatch(one -> one.value().orElse(1) == 0)
                && Fits.of(ground.model(), records, animal, at) == Whether.EXCLUDED;
        if (never) {
            return Optional.empty();
        }
        draft.settled(chances);
        return Optional.of(new Report(pair, chances, belief(records, after)));
    }

    /** What is known by some records; of what is never reported nothing follows. */
    private Belief belief(Inference records, List<Optional<Conclusions>> weighed) {
        Map<AllelePair, Possibility> possible = records.possible(locus.id()).of(animal);
        List<OfGenotype> genotypes = new ArrayList<>();
        for (AllelePair pair : pairs) {
            Possibility one = possible.getOrDefault(pair, new Possibility.Excluded());
            genotypes.add(new OfGenotype(
                    pair,
                    LookClasses.whether(one),
                    weighed.stream().map(found -> chance(found, pair)).toList()));
        }
        List<Chance> carries = question.allele()
                .map(allele -> weighed.stream()
                        .map(found -> found.map(known -> Chance.carries(known, animal, allele))
                                .orElseGet(DnaTestAnswer::never))
                        .toList())
                .orElse(List.of());
        return new Belief(genotypes, carries);
    }

    private Chance chance(Optional<Conclusions> found, AllelePair pair) {
        return found.map(known -> Chance.of(known, animal, locus.id(), pair::equals))
                .orElseGet(DnaTestAnswer::never);
    }

    private static Chance never() {
        return Chance.unsettled(Standing.EXACT);
    }

    /** The statements about the locus; where an allele is asked about, those that say what it shows by itself. */
    private List<Statement> support() {
        Set<String> pointers = new LinkedHashSet<>();
        if (question.allele().isPresent()) {
            String allele = question.allele().get().allele().id();
            for (Sex sex : Sex.values()) {
                locus.pairs(sex).stream()
                        .filter(pair -> pair.has(allele)
                                && pair.alleles().stream()
                                        .allMatch(one -> one.id().equals(allele)))
                        .forEach(pair -> pointers.addAll(locus.decidedBy(pair, sex)));
            }
        } else {
            String prefix = Pointer.of("loci", locus.id());
            ground.model().statements().keySet().stream()
                    .filter(one -> one.equals(prefix) || one.startsWith(prefix + "/"))
                    .forEach(pointers::add);
        }
        return ground.model().statements().values().stream()
                .filter(one -> pointers.contains(one.pointer()))
                .toList();
    }

    private static Cause cause(List<Statement> support) {
        Set<Grade> grades = new LinkedHashSet<>();
        support.forEach(one -> grades.add(one.grade()));
        return grades.contains(Grade.MOLECULAR)
                ? Cause.ON_RECORD
                : grades.contains(Grade.ONE_STUDY) ? Cause.ONE_STUDY : Cause.NONE_KNOWN;
    }

    private void complete(DnaTest found) {
        draft.given.addAll(new RecordWords(kindred).facts(animal));
        draft.given.add(
                "related animals in the pedigree: " + (kindred.individuals().size() - 1));
        draft.rest(kindred, at, found.origins());
        found.support().forEach(one -> draft.statements.add(one.pointer()));
        draft.notices(kindred, ground.inference(kindred).notices());
        draft.notices.add(
                "whether any laboratory offers such a test is not known here; ask a veterinarian or a laboratory,"
                        + " and ask for its error rate");
        if (found.origins().isEmpty()) {
            draft.undecided();
        }
        taken();
        Animal own = OwnRecords.of(ground.compiled(), recorded);
        draft.raise(OwnRecords.coat(ground.answers(), own));
        draft.raise(Situation.of("carriers").with(Role.ANIMAL, OwnRecords.looks(own)));
    }

    private void taken() {
        String who = RecordWords.quoted(animal);
        draft.taken.add(
                "sample",
                "The sample is of " + who + " and of no other animal.",
                "A sample of another animal tells of that one, however good the test is; have it taken by somebody who makes"
                        + " sure who it is.");
        draft.taken.add(
                "tells-apart",
                "The test tells all genotypes of locus " + locus.id() + " apart.",
                "A test of one variant alone leaves the other alleles of the locus unknown.");
        if (question.error().isZero()) {
            draft.taken.add(
                    "test-error",
                    "The test is never wrong.",
                    "Every test is wrong now and then; ask the laboratory how often, and ask again with that.");
        } else {
            draft.taken.add(
                    "test-error",
                    "The test is wrong in " + question.error()
                            + " of cases, and reports each other genotype equally often then, whatever else is recorded.",
                    "Errors that are likelier one way than another, or that come back when the same sample is tested again,"
                            + " change what a report tells.");
        }
    }
}
