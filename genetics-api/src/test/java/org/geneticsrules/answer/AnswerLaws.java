package org.geneticsrules.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.cross.Parent;
import org.geneticsrules.cross.Sires;
import org.geneticsrules.cross.UncertainCross;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomAnimals;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Life;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Answers in models of the whole language, held to the engines below them. */
@Once
class AnswerLaws {

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 50)
    void numbers_of_a_mating_are_those_of_its_cross(@ForAll("seeds") long seed) {
        Statistics.label("mating")
                .collect(mating(seed))
                .coverage(coverage -> coverage.check("weighted").percentage(p -> p > 5));
    }

    /** Of these there is one among six to twenty random matings, so they were looked for. */
    @ParameterizedTest
    @CsvSource({
        "'weighted, of two males', 48",
        "'weighted, of two males', 50",
        "'weighted, of two males', 51",
        "unweighted, 45",
        "unweighted, 53",
        "unweighted, 58",
        "undecided, 8",
        "undecided, 25",
        "undecided, 39"
    })
    void numbers_of_rarer_matings_are_those_of_their_crosses(String kind, long seed) {
        assertEquals(kind, mating(seed));
    }

    @Property(tries = 150)
    void numbers_of_a_coat_are_those_of_its_expression(@ForAll("seeds") long seed) {
        Statistics.label("coat").collect(coat(seed)).coverage(coverage -> {
            coverage.check("chance").percentage(p -> p > 5);
            coverage.check("certain").percentage(p -> p > 10);
        });
    }

    @Property(tries = 80)
    void an_animal_seen_before_goes_on_as_its_life_allows(@ForAll("seeds") long seed) {
        Statistics.label("history")
                .collect(history(seed))
                .coverage(coverage -> coverage.check("as before").percentage(p -> p > 10));
    }

    /** What was seen of one random animal in six tells something of its life, as of these. */
    @ParameterizedTest
    @ValueSource(longs = {14, 26, 29, 36})
    void an_animal_seen_before_may_have_fewer_ways_to_go_on(long seed) {
        assertEquals("narrowed", history(seed));
    }

    @Property(tries = 80)
    void a_stage_that_is_not_asked_for_makes_no_difference(@ForAll("seeds") long seed) {
        Statistics.label("stage").collect(stageless(seed)).coverage(coverage -> {
            coverage.check("needed").percentage(p -> p > 2);
            coverage.check("answered").percentage(p -> p > 10);
        });
    }

    /** Both parents carry an allele of one strand, which only one of them passes on. */
    @Example
    void a_stage_makes_no_difference_to_loci_handed_down_by_one_parent() {
        assertEquals("answered", stageless(-34));
    }

    /** An animal of known genotype, of an unknown one, or seen once or twice, with the parent it has to be. */
    private record Stated(Animal animal, Parent parent) {

        /** Three animals of whom little is known are more kinds of parents than a law can go through often; then each is named in full. */
        static Stated of(CompiledModel compiled, Genome genome, Sex sex, boolean inFull, SplittableRandom random) {
            Model model = compiled.model();
            Genotype genotype = RandomAnimals.genotype(model, sex, random.nextLong());
            Animal animal = Animal.unknown(compiled).ofSex(sex);
            Parent parent = Parent.among(GenotypeSet.all(model).of(sex));
            if (inFull || random.nextInt(3) > 0) {
                Genotype named = inFull || random.nextBoolean()
                        ? genotype
                        : genotype.restrictedTo(model.loci().keySet().stream()
                                .filter(locus -> random.nextBoolean())
                                .toList());
                animal = animal.withGenotype(named.toString(), OmittedLoci.UNKNOWN);
                parent = new Parent(GenotypeSet.of(model, named).of(sex), named.phase(), List.of(), Optional.empty());
            }
            if (random.nextInt(3) == 0) {
                for (Sighting one : RandomAnimals.sightings(model, genome, sex, genotype, random.nextLong())) {
                    animal = animal.seen(one);
                    parent = parent.seen(one);
                }
            }
            if (random.nextBoolean()) {
                animal = animal.from(model.populations().get("even"));
                parent = parent.from(model.populations().get("even"));
            }
            return new Stated(animal, parent);
        }
    }

    static String mating(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Model model = RandomModels.whole(random.nextLong());
        CompiledModel compiled = CompiledModel.of(model);
        Genome genome = new Genome(DocumentMaps.of(model));
        List<Stated> males = new ArrayList<>();
        boolean two = random.nextInt(4) == 0;
        boolean sireInFull = two || random.nextBoolean();
        for (int i = two ? 2 : 1; i > 0; i--) {
            males.add(Stated.of(compiled, genome, Sex.MALE, sireInFull, random));
        }
        Stated dam = Stated.of(compiled, genome, Sex.FEMALE, two || !sireInFull, random);
        boolean perKit = random.nextBoolean();
        List<Probability> access =
                males.size() == 1 ? List.of(Probability.ONE) : List.of(Probability.of(1, 4), Probability.of(3, 4));
        UncertainCross cross = UncertainCross.of(
                compiled, new Sires(males.stream().map(Stated::parent).toList(), access, perKit), dam.parent());
        Set<String> traits = new LinkedHashSet<>(model.visibleTraits());
        while (traits.size() > 1 && random.nextBoolean()) {
            traits.remove(traits.iterator().next());
        }
        if (random.nextBoolean()) {
            traits.add(Sex.VARIABLE);
        }
        LifeStage stage = RandomAnimals.stage(model, random.nextLong());
        Census census = List.of(Census.values()).get(random.nextInt(3));
        List<String> ordered = new ArrayList<>(traits);
        if (ordered.remove(Sex.VARIABLE)) {
            ordered.add(0, Sex.VARIABLE);
        }
        View view = new View(ordered, stage, census);
        String trait = List.copyOf(model.visibleTraits()).get(0);
        Phenotype event = Phenotype.of(trait, model.states(trait).get(0));
        MatingQuestion question = MatingQuestion.of(
                        new PossibleSires(males.stream().map(Stated::animal).toList(), access, perKit), dam.animal())
                .inTraits(traits)
                .at(stage)
                .among(census);
        Answers answers = Answers.of(compiled, List.of());
        Answer answer = answers.mating(question);
        if (cross.isContradictory()) {
            assertEquals(Status.UNDECIDED, answer.status());
            return "undecided";
        }
        if (!cross.missingFrequencies(view, List.of()).isEmpty()) {
            assertEquals(
                    cross.possible(view),
                    new LinkedHashSet<>(
                            answer.outcomes().stream().map(Outcome::phenotype).toList()),
                    () -> model + ": " + cross);
            return "unweighted";
        }
        Optional<Distribution<Phenotype>> looks = cross.probable(view);
        if (looks.isEmpty()) {
            assertEquals(Status.UNDECIDED, answer.status());
            return "undecided";
        }
        Map<Phenotype, Probability> numbers = new LinkedHashMap<>();
        answer.outcomes()
                .forEach(outcome ->
                        numbers.put(outcome.phenotype(), outcome.probability().orElseThrow()));
        assertEquals(looks.get(), Distribution.of(numbers), () -> model + ": " + cross);
        if (answer.lost().isPresent()) {
            assertEquals(cross.lostShare(census), answer.lost(), () -> model + ": " + cross);
        }
        Answer counting =
                answers.mating(question.inTraits(List.of()).lookingFor(event).inLitterOf(3));
        View narrow = new View(List.of(trait), stage, census);
        if (counting.probability().isPresent()) {
            assertEquals(cross.next(narrow, event, List.of()), counting.probability());
            Litter litter = counting.litter().orElseThrow();
            assertEquals(cross.count(narrow, event, LitterSize.of(3), List.of()).orElseThrow(), litter.counts());
            assertEquals(litter.counts().probability(3), litter.all());
        }
        return two ? "weighted, of two males" : "weighted";
    }

    static String coat(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Model model = RandomModels.whole(random.nextLong());
        CompiledModel compiled = CompiledModel.of(model);
        Sex sex = List.of(Sex.values()).get(random.nextInt(2));
        Genotype genotype = RandomAnimals.genotype(model, sex, random.nextLong());
        LifeStage stage = RandomAnimals.stage(model, random.nextLong());
        Animal animal = Animal.unknown(compiled).ofSex(sex).withGenotype(genotype.toString(), OmittedLoci.UNKNOWN);
        Answer answer = Answers.of(compiled, List.of()).coat(new CoatQuestion(animal, Set.of(), stage));
        if (answer.status() == Status.UNDECIDED) {
            return "never born";
        }
        Distribution<Phenotype> expected =
                compiled.express(genotype, sex, stage, model.visibleTraits()).map(Expressed::phenotype);
        assertEquals(expected, numbers(answer), () -> model + ": " + sex + " " + genotype + " at " + stage);
        return expected.outcomes().size() > 1 ? "chance" : "certain";
    }

    private static Distribution<Phenotype> numbers(Answer answer) {
        Map<Phenotype, Probability> numbers = new LinkedHashMap<>();
        answer.outcomes()
                .forEach(outcome ->
                        numbers.put(outcome.phenotype(), outcome.probability().orElseThrow()));
        return Distribution.of(numbers);
    }

    /** Seen at one stage and asked about at another: the chance given what was seen is that of both over that of the first. */
    static String history(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Model model = RandomModels.whole(random.nextLong());
        CompiledModel compiled = CompiledModel.of(model);
        Genome genome = new Genome(DocumentMaps.of(model));
        Sex sex = List.of(Sex.values()).get(random.nextInt(2));
        Genotype genotype = RandomAnimals.genotype(model, sex, random.nextLong());
        LifeStage stage = RandomAnimals.stage(model, random.nextLong());
        List<Sighting> seen = RandomAnimals.sightings(model, genome, sex, genotype, random.nextLong());
        Animal animal = Animal.unknown(compiled).ofSex(sex).withGenotype(genotype.toString(), OmittedLoci.UNKNOWN);
        for (Sighting one : seen) {
            animal = animal.seen(one);
        }
        Answer answer = Answers.of(compiled, List.of()).coat(new CoatQuestion(animal, Set.of(), stage));
        if (answer.status() == Status.UNDECIDED) {
            return "never born";
        }
        List<String> traits = List.copyOf(model.visibleTraits());
        List<Map<String, String>> stages = new ArrayList<>();
        seen.forEach(one -> stages.add(RandomAnimals.plain(one.stage())));
        stages.add(RandomAnimals.plain(stage));
        Map<Phenotype, Probability> joint = new LinkedHashMap<>();
        Map<Phenotype, Probability> plain = new LinkedHashMap<>();
        Life.histories(genome, RandomAnimals.animals(genome, sex, genotype).get(0), stages, traits)
                .forEach((looks, chance) -> {
                    Phenotype last = Phenotype.from(looks.get(looks.size() - 1));
                    plain.merge(last, chance, Probability::plus);
                    boolean agrees = true;
                    for (int i = 0; i < seen.size(); i++) {
                        Map<String, String> then = looks.get(i);
                        agrees &= seen.get(i).look().asMap().entrySet().stream()
                                .allMatch(one -> !then.containsKey(one.getKey())
                                        || then.get(one.getKey()).equals(one.getValue()));
                    }
                    if (agrees) {
                        joint.merge(last, chance, Probability::plus);
                    }
                });
        Probability whole = joint.values().stream().reduce(Probability.ZERO, Probability::plus);
        assertTrue(!whole.isZero());
        joint.replaceAll((look, chance) -> chance.dividedBy(whole));
        Distribution<Phenotype> expected = Distribution.of(joint);
        assertEquals(expected, numbers(answer), () -> model + ": " + sex + " " + genotype + " seen " + seen);
        return expected.equals(Distribution.of(plain)) ? "as before" : "narrowed";
    }

    /** What is answered without a stage is the same at every stage, of one animal and of a mating. */
    static String stageless(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Model model = RandomModels.whole(random.nextLong());
        CompiledModel compiled = CompiledModel.of(model);
        Answers answers = Answers.of(compiled, List.of());
        Genotype sire = RandomAnimals.genotype(model, Sex.MALE, random.nextLong());
        Genotype dam = RandomAnimals.genotype(model, Sex.FEMALE, random.nextLong());
        List<Animal> animals = new ArrayList<>();
        for (Genotype one : List.of(sire, dam)) {
            animals.add(Animal.unknown(compiled).withGenotype(one.toString(), OmittedLoci.UNKNOWN));
        }
        LifeStage stage = RandomAnimals.stage(model, random.nextLong());
        String found = "never born";
        for (String trait : model.visibleTraits()) {
            try {
                Answer coat = answers.coat(new CoatQuestion(animals.get(1).ofSex(Sex.FEMALE), Set.of(trait)));
                Answer young = answers.mating(
                        MatingQuestion.of(animals.get(0), animals.get(1)).inTraits(List.of(trait)));
                if (coat.status() == Status.EXACT) {
                    found = "answered";
                    assertEquals(
                            compiled.express(dam, Sex.FEMALE, stage, List.of(trait))
                                    .map(Expressed::phenotype),
                            numbers(coat),
                            () -> model + ": " + dam + " at " + stage);
                }
                if (young.status() == Status.EXACT) {
                    assertEquals(
                            UncertainCross.of(compiled, Parent.of(model, sire), Parent.of(model, dam))
                                    .probable(View.of(List.of(trait)).at(stage))
                                    .orElseThrow(),
                            numbers(young),
                            () -> model + ": " + sire + " x " + dam + " at " + stage);
                }
            } catch (ProblemsException needed) {
                assertEquals("stage-needed", needed.problems().get(0).code());
                return "needed";
            }
        }
        return found;
    }
}
