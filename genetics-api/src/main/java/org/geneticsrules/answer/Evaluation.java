package org.geneticsrules.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.geneticsrules.cross.Detection;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.cross.Parent;
import org.geneticsrules.cross.Sires;
import org.geneticsrules.cross.TestMating;
import org.geneticsrules.cross.UncertainCross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Population;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** Computes what one test mating after another would take, by the trait that tells most. */
final class Evaluation {

    private static final LitterSize ONE = LitterSize.of(1);

    private final CompiledModel compiled;
    private final TestMatingQuestion question;
    private final Sex sex;
    private final WatchedTraits watched;
    private final Set<String> notices;

    Evaluation(Answers answers, TestMatingQuestion question, Sex sex, WatchedTraits watched, Set<String> notices) {
        this.compiled = answers.compiled();
        this.question = question;
        this.sex = sex;
        this.watched = watched;
        this.notices = notices;
    }

    /**
     * Finds what a test takes.
     *
     * @param carrier the animal if it carries the allele
     * @param clear the animal if it does not
     */
    TestResult of(HiddenAllele allele, Animal carrier, Animal clear, TestMate mate) {
        TestResult best = new TestResult(allele, mate, List.of(), Set.of(), List.of(), List.of());
        for (List<String> traits : watched.of(allele.locus())) {
            try {
                TestResult found = by(allele, carrier, clear, mate, traits);
                best = rank(found) < rank(best) ? found : best;
            } catch (TooLargeException e) {
                notices.add("looking at " + String.join(", ", traits) + " was left out: " + e.getMessage());
            }
        }
        return best;
    }

    private TestResult by(HiddenAllele allele, Animal carrier, Animal clear, TestMate mate, List<String> traits) {
        View view = watched.view(traits);
        TestMating test = test(carrier, mate, Optional.empty());
        Set<Phenotype> signs = test.proofs(view, clear.parent());
        List<TestResult.Course> courses = new ArrayList<>();
        if (!signs.isEmpty()) {
            if (test.missingFrequencies(view).isEmpty()) {
                courses(test, view, signs, Optional.empty(), courses);
            } else {
                bound(carrier, mate, view, signs).ifPresent(courses::add);
                for (Population population : compiled.model().populations().values()) {
                    TestMating weighed = test(carrier, mate, Optional.of(population));
                    if (weighed.missingFrequencies(view).isEmpty()) {
                        courses(weighed, view, signs, Optional.of(population), courses);
                    }
                }
            }
        }
        return new TestResult(allele, mate, signs.isEmpty() ? List.of() : traits, signs, courses, List.of());
    }

    private TestMating test(Animal carrier, TestMate mate, Optional<Population> unstated) {
        Animal weighed = carrier.population().isPresent()
                ? carrier
                : unstated.map(carrier::from).orElse(carrier);
        return TestMating.of(compiled, sex, weighed.parent(), mate.mate(unstated));
    }

    private void courses(
            TestMating test,
            View view,
            Set<Phenotype> signs,
            Optional<Population> population,
            List<TestResult.Course> courses) {
        Optional<Detection> one = test.byOneMate(view, signs, ONE);
        one.ifPresent(found -> courses.add(course(TestResult.Step.YOUNG_OF_ONE_MATE, population, false, found)));
        Optional<Detection> litters = question.litter().flatMap(size -> test.byOneMate(view, signs, size));
        litters.ifPresent(found -> courses.add(course(TestResult.Step.LITTERS_OF_ONE_MATE, population, false, found)));
        test.byManyMates(view, signs, question.litter().orElse(ONE))
                .filter(found -> !litters.or(() -> one).equals(Optional.of(found)))
                .ifPresent(found -> courses.add(course(TestResult.Step.MATES, population, false, found)));
    }

    /**
     * What is enough whatever a known mate and the animal carry that is not known: the least chance with which young of any of them show
     * one of the signs. It is not told where new mutation might make it less.
     */
    private Optional<TestResult.Course> bound(Animal carrier, TestMate mate, View view, Set<Phenotype> signs) {
        boolean mutates = compiled.lociRead(view).stream()
                .anyMatch(locus -> !compiled.model().locus(locus).mutation().isEmpty());
        if (mutates || mate.kind() != TestMate.Kind.KNOWN) {
            return Optional.empty();
        }
        Parent tested = carrier.parent();
        Parent other = mate.animals().get(0).as(sex.other()).parent();
        UncertainCross cross = sex == Sex.MALE
                ? UncertainCross.of(compiled, Sires.of(tested), other)
                : UncertainCross.of(compiled, Sires.of(other), tested);
        Probability least = Probability.ZERO;
        for (Phenotype sign : signs) {
            Probability rarest = cross.possibleChances(view, sign, List.of()).stream()
                    .min(Probability::compareTo)
                    .orElse(Probability.ZERO);
            least = rarest.compareTo(least) > 0 ? rarest : least;
        }
        return least.isZero()
                ? Optional.empty()
                : Optional.of(course(
                        TestResult.Step.YOUNG_OF_ONE_MATE,
                        Optional.empty(),
                        true,
                        Detection.of(Distribution.certain(least.complement()))));
    }

    private TestResult.Course course(
            TestResult.Step step, Optional<Population> population, boolean bound, Detection detection) {
        List<TestResult.Needed> needed = new ArrayList<>();
        for (Probability confidence : question.confidences()) {
            Probability left = confidence.complement();
            needed.add(new TestResult.Needed(
                    confidence,
                    counted(() -> detection.fewest(left)),
                    question.before()
                            .flatMap(before -> counted(() -> detection.fewest(Detection.missFor(before, left))))));
        }
        return new TestResult.Course(step, population, bound, detection, needed);
    }

    private Optional<Detection.Fewest> counted(Supplier<Detection.Fewest> fewest) {
        try {
            return Optional.of(fewest.get());
        } catch (TooLargeException e) {
            notices.add("a number is left out: " + e.getMessage());
            return Optional.empty();
        }
    }

    /** Fewest first; then what shows it only with luck, what would need frequencies, and what shows nothing. */
    private static int rank(TestResult result) {
        int nothing = result.signs().isEmpty() ? 1 : 0;
        int unweighed = result.courses().isEmpty() ? 1 : 0;
        return result.fewest().orElse(Integer.MAX_VALUE - 2 + nothing + unweighed);
    }
}
