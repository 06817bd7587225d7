package org.geneticsrules.answer.recorded;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.DnaTest.OfGenotype;
import org.geneticsrules.answer.recorded.DnaTest.Report;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.RecordedKindred;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.testing.brute.Worlds;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What DNA tests would tell, against the list of every way in which a pedigree and a report may have come about; and against what all
 * records say once the report is one of them.
 */
@Once
class DnaTestLaws {

    private static final double CLOSE = 1e-9;
    private static final int MOST = 10_000;

    @Provide
    Arbitrary<RandomPedigree> pedigrees() {
        return RandomPedigrees.pedigrees();
    }

    @Property(tries = 25)
    void reports_are_what_the_list_says(@ForAll("pedigrees") RandomPedigree random) {
        reports(random);
    }

    /** What random pedigrees seldom reach was looked for. */
    @ParameterizedTest
    @CsvSource({
        "leaves something open, 3",
        "never reported, 32",
        "nothing to test, 18",
        "of unknown sex, 32",
        "of unknown sex, 86",
        "settles, 2",
        "tells nothing, 2",
        "tested before, 2",
        "with parents, 3"
    })
    void rare_reports_are_what_the_list_says(String kind, long seed) {
        Set<String> met = reports(RandomPedigrees.pedigree(seed));
        assertTrue(met.contains(kind), met.toString());
    }

    /** Compares, and tells which kinds of tests were met. */
    static Set<String> reports(RandomPedigree random) {
        Set<String> met = new TreeSet<>();
        Kindred kindred = RecordedKindred.scored(random.kindred());
        Optional<Worlds> now = Worlds.within(random.genome(), kindred, MOST);
        if (now.isEmpty() || now.get().size() == 0) {
            return met;
        }
        Model model = random.model();
        Probability error = random.seed() % 2 == 0 ? Probability.ZERO : Probability.of(1, 20);
        for (Kindred.Member member : kindred.members().stream().limit(3).toList()) {
            for (Locus locus : model.loci().values().stream().limit(2).toList()) {
                Allele asked = locus.alleles().values().iterator().next();
                try {
                    DnaTest found = (DnaTest) asked(model, kindred)
                            .dnaTest(DnaTestQuestion.of(member.id(), new HiddenAllele(locus.id(), asked))
                                    .wrongIn(error))
                            .finding();
                    if (found.reports().isEmpty()) {
                        met.add("only by mutation");
                    } else {
                        compare(random, kindred, now.get(), found, asked, met);
                    }
                } catch (ProblemsException refused) {
                    assertEquals("nothing-to-test", refused.problems().get(0).code());
                    met.add("nothing to test");
                }
            }
        }
        return met;
    }

    private static RecordedAnswers asked(Model model, Kindred kindred) {
        return RecordedAnswers.of(
                        Answers.of(CompiledModel.of(model), List.of()), RecordedKindred.pedigree(model, kindred))
                .with(RecordedKindred.confusions(kindred));
    }

    private static void compare(
            RandomPedigree random, Kindred kindred, Worlds now, DnaTest found, Allele asked, Set<String> met) {
        Map<List<String>, Double> before = chances(now, found);
        beliefs(before, found.before(), asked, random.toString());
        double bits = 0;
        double sum = 0;
        for (Report one : found.reports()) {
            Kindred tested = tested(random, kindred, found, one.reported());
            Optional<Worlds> listed = Worlds.within(random.genome(), tested, MOST);
            if (listed.isEmpty()) {
                return;
            }
            Worlds then = listed.get();
            double chance = then.size() == 0
                    ? 0
                    : then.likelihood().toDouble() / now.likelihood().toDouble();
            sum += chance;
            assertEquals(chance, one.chances().get(0).value().orElseThrow(), CLOSE, random + " " + one);
            if (chance > 0) {
                Map<List<String>, Double> after = chances(then, found);
                beliefs(after, one.after(), asked, random + " " + one);
                recorded(random.model(), tested, found, one, asked);
                for (Map.Entry<List<String>, Double> known : after.entrySet()) {
                    bits += chance
                            * known.getValue()
                            * Math.log(known.getValue() / before.get(known.getKey()))
                            / Math.log(2);
                }
            } else {
                met.add("never reported");
            }
        }
        assertEquals(1, sum, CLOSE, "one of them is reported");
        assertEquals(bits, found.tells().get(0).bits().orElseThrow(), CLOSE, random.toString());
        boolean open = before.size() > 1;
        met.add(!open ? "tells nothing" : found.error().isZero() ? "settles" : "leaves something open");
        if (open && !kindred.member(found.animal()).tests().isEmpty()) {
            met.add("tested before");
        }
        if (open && kindred.litterOf(found.animal()).isPresent()) {
            met.add("with parents");
        }
        if (open && before.keySet().stream().map(List::size).distinct().count() > 1) {
            met.add("of unknown sex");
        }
    }

    /** What all records say once the report is one of them. */
    private static void recorded(Model model, Kindred tested, DnaTest found, Report one, Allele asked) {
        MayCarry carries = (MayCarry) asked(model, tested)
                .mayCarry(found.animal(), Set.of(found.locus()))
                .finding();
        double expected = carries.loci().get(0).alleles().stream()
                .filter(allele -> allele.allele().equals(asked))
                .findFirst()
                .orElseThrow()
                .chances()
                .get(0)
                .value()
                .orElseThrow();
        assertEquals(expected, one.after().carries().get(0).value().orElseThrow(), CLOSE);
    }

    private static void beliefs(Map<List<String>, Double> expected, DnaTest.Belief found, Allele asked, String which) {
        double carries = 0;
        for (OfGenotype one : found.genotypes()) {
            double chance = expected.getOrDefault(ids(one.pair()), 0.0);
            assertEquals(chance, one.chances().get(0).value().orElseThrow(), CLOSE, which + " " + one);
            carries += ids(one.pair()).contains(asked.id()) ? chance : 0;
        }
        assertEquals(carries, found.carries().get(0).value().orElseThrow(), CLOSE, which);
    }

    private static Map<List<String>, Double> chances(Worlds worlds, DnaTest found) {
        Map<List<String>, Double> chances =
                new TreeMap<>((one, other) -> one.toString().compareTo(other.toString()));
        worlds.genotypes(found.animal(), found.locus())
                .forEach((text, chance) -> chances.merge(ids(text), chance.toDouble(), Double::sum));
        return chances;
    }

    private static List<String> ids(AllelePair pair) {
        return pair.alleles().stream().map(Allele::id).sorted().toList();
    }

    private static List<String> ids(String genotype) {
        return genotype.isEmpty()
                ? List.of()
                : Arrays.stream(genotype.split("/", -1)).sorted().toList();
    }

    private static Kindred tested(RandomPedigree random, Kindred kindred, DnaTest found, AllelePair reported) {
        Set<String> texts = new TreeSet<>();
        for (String sex : List.of("female", "male")) {
            random.genome().pairs(found.locus(), sex).stream()
                    .filter(text -> ids(text).equals(ids(reported)))
                    .forEach(texts::add);
        }
        List<Kindred.Member> members = new ArrayList<>();
        for (Kindred.Member one : kindred.members()) {
            List<Kindred.Test> tests = new ArrayList<>(one.tests());
            if (one.id().equals(found.animal())) {
                tests.add(new Kindred.Test(found.locus(), texts, found.error()));
            }
            members.add(new Kindred.Member(one.id(), one.sex(), one.population(), one.sightings(), tests));
        }
        return new Kindred(members, kindred.litters(), kindred.confusions());
    }
}
