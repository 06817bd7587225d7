package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.cross.RandomMatings.Known;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.OtherWords;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Life;
import org.geneticsrules.testing.brute.Mating;
import org.geneticsrules.trait.Sex;

/**
 * Relevant evidence in models of the whole language: a statement that an answer does not cite may say anything else without changing it,
 * and one that it cites may not. It says something else in the document, which the reference answers again.
 *
 * <p>Most statements that are cited are seen to matter one by one. Those that are not stand beside another one that would do: a mask
 * kept from being active by two traits, two orders of dominance between alleles that show the same.
 */
@Once
class WholeRestsOnLaws {

    /** Statements of one kind that say something else in one try; another try takes others. */
    private static final int MOST_OF_A_KIND = 2;

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 60)
    void uncited_statements_may_say_anything_and_cited_ones_may_not(@ForAll("seeds") long seed) {
        citesWhatMatters(Known.draw(seed), seed);
    }

    /** Some kinds are met in one random mating of ten, so these were looked for: among them all are, cited and not. */
    @Example
    void statements_of_every_kind_are_tried() {
        Set<String> models = new TreeSet<>();
        Map<Boolean, Set<String>> kinds = new TreeMap<>();
        int cited = 0;
        int matter = 0;
        for (long seed : new long[] {13, 19, 22, 26, 28, 29, 32, 41, 44, 45, 48, 55, 56, 58, 59}) {
            Known known = Known.draw(seed);
            models.addAll(uses(known.model()));
            for (Tried tried : citesWhatMatters(known, seed)) {
                kinds.computeIfAbsent(tried.cited(), any -> new TreeSet<>()).add(tried.kind());
                if (tried.cited() && List.of("shows", "traits", "masks").contains(tried.kind())) {
                    cited++;
                    matter += tried.matters() ? 1 : 0;
                }
            }
        }
        assertEquals(
                Set.of("certain", "chance", "lethal", "linked", "masked", "progression", "sex-linked", "threshold"),
                models);
        Set<String> all = Set.of("absent", "groups", "masks", "mutation", "order", "shows", "traits", "viability");
        assertEquals(Map.of(true, all, false, all), kinds);
        assertTrue(matter * 10 > cited * 8, matter + " of " + cited + " cited ones matter by themselves");
    }

    /** A statement that was made to say something else. */
    private record Tried(String pointer, boolean cited, boolean matters) {
        String kind() {
            return WholeRestsOnLaws.kind(pointer);
        }
    }

    static List<Tried> citesWhatMatters(Known known, long seed) {
        Model model = known.model();
        Kits kits = new Kits(known);
        Optional<Answer> before = kits.looks(DocumentMaps.of(model));
        List<Tried> all = new ArrayList<>();
        if (!known.parentsLive() || before.isEmpty()) {
            return all;
        }
        Set<String> cited = known.cross().explain(known.looking().withoutSex()).statements();
        OtherWords others = new OtherWords(model);
        for (String pointer : some(model.statements().keySet(), seed)) {
            boolean matters = false;
            List<Map<String, Object>> documents = others.at(pointer);
            for (Map<String, Object> changed : documents) {
                // where it is no model any more, or no kit is counted, there is nothing to compare
                Optional<Answer> after = kits.looks(changed);
                if (after.isPresent() && !cited.contains(pointer)) {
                    assertEquals(
                            before.get().shares(), after.get().shares(), () -> known + " does not cite " + pointer);
                }
                matters |= !after.equals(before);
            }
            if (!documents.isEmpty()) {
                all.add(new Tried(pointer, cited.contains(pointer), matters));
            }
        }
        return all;
    }

    /** Statements of every kind, so that those of rare kinds are not left out. */
    private static List<String> some(Set<String> pointers, long seed) {
        List<String> mixed = new ArrayList<>(pointers);
        Collections.shuffle(mixed, new Random(seed));
        Map<String, Integer> counts = new LinkedHashMap<>();
        mixed.removeIf(pointer -> counts.merge(kind(pointer), 1, Integer::sum) > MOST_OF_A_KIND);
        return mixed;
    }

    private static String kind(String pointer) {
        for (String part : List.of("mutation", "order", "shows", "absent")) {
            if (pointer.contains("/" + part)) {
                return part;
            }
        }
        return pointer.substring(1, pointer.indexOf('/', 1));
    }

    private static List<String> uses(Model model) {
        List<String> uses = new ArrayList<>();
        Set<Class<?>> given = new LinkedHashSet<>();
        model.rules().values().forEach(rule -> {
            rule.cases().forEach(one -> given.add(one.gives().getClass()));
            rule.otherwise().ifPresent(last -> given.add(last.gives().getClass()));
        });
        given.forEach(kind -> uses.add(kind.getSimpleName().toLowerCase(Locale.ROOT)));
        model.groups().values().forEach(group -> {
            if (group.transmission().heterogametic().isPresent()) {
                uses.add("sex-linked");
            } else if (group.loci().size() > 1) {
                uses.add("linked");
            }
        });
        if (model.viability().values().stream().anyMatch(one -> one.birth().isZero())) {
            uses.add("lethal");
        }
        if (!model.masks().isEmpty()) {
            uses.add("masked");
        }
        return uses;
    }

    /** What the kits that may be counted look like, each by itself, and the shares of the looks among all. */
    private record Answer(Map<Kit, Map<?, Probability>> looks, Map<Object, Probability> shares) {}

    /** A kit, whose phase nobody sees. */
    private record Kit(String sex, Map<String, String> genotype) {}

    /** The kits of two parents, as the reference lists them; what they carry is listed once, unless it is handed down otherwise. */
    private static final class Kits {
        private final Known known;
        private final String census;
        private final Map<Kit, Animal> animals = new LinkedHashMap<>();
        private final Map<Object, List<Map<Kit, Probability>>> conceived = new LinkedHashMap<>();

        Kits(Known known) {
            this.known = known;
            this.census = known.looking().view().census().word();
        }

        /** Empty if no kit is counted, or if masks contradict each other so that it is no model. */
        Optional<Answer> looks(Map<String, Object> document) {
            Genome genome = new Genome(document);
            Map<Kit, Probability> counted = counted(genome, document);
            Map<Kit, Map<?, Probability>> each = new LinkedHashMap<>();
            Map<Object, Probability> shares = new LinkedHashMap<>();
            for (Map.Entry<Kit, Probability> kit : counted.entrySet()) {
                try {
                    Map<Map<String, String>, Probability> looks = Life.looks(
                            genome,
                            animals.get(kit.getKey()),
                            known.looking().stage(),
                            known.looking().traits());
                    each.put(kit.getKey(), looks);
                    looks.forEach((look, share) -> shares.merge(look, share.times(kit.getValue()), Probability::plus));
                } catch (IllegalStateException contradiction) {
                    return Optional.empty();
                }
            }
            return shares.isEmpty() ? Optional.empty() : Optional.of(new Answer(each, shares));
        }

        /** The mean over the couples that have kits, which differ in phase. */
        private Map<Kit, Probability> counted(Genome genome, Map<String, Object> document) {
            List<Map<Kit, Probability>> fertile = new ArrayList<>();
            Map<Kit, Probability> viability = new LinkedHashMap<>();
            for (Map<Kit, Probability> couple : conceived(genome, document)) {
                Map<Kit, Probability> lives = new LinkedHashMap<>();
                couple.forEach((kit, share) -> {
                    Probability chance =
                            viability.computeIfAbsent(kit, key -> Mating.viability(genome, animals.get(key), census));
                    if (!chance.isZero()) {
                        lives.put(kit, share.times(chance));
                    }
                });
                if (!lives.isEmpty()) {
                    fertile.add(lives);
                }
            }
            Map<Kit, Probability> counted = new LinkedHashMap<>();
            for (Map<Kit, Probability> lives : fertile) {
                Probability all = lives.values().stream().reduce(Probability.ZERO, Probability::plus);
                Probability part = Probability.of(1, fertile.size());
                lives.forEach(
                        (kit, share) -> counted.merge(kit, share.dividedBy(all).times(part), Probability::plus));
            }
            return counted;
        }

        private List<Map<Kit, Probability>> conceived(Genome genome, Map<String, Object> document) {
            List<Object> handedDown = new ArrayList<>();
            handedDown.add(document.getOrDefault("groups", ""));
            ((Map<?, ?>) document.get("loci"))
                    .values()
                    .forEach(locus ->
                            handedDown.add(Optional.ofNullable((Object) ((Map<?, ?>) locus).get("mutation"))));
            return conceived.computeIfAbsent(handedDown, key -> {
                List<Map<Kit, Probability>> couples = new ArrayList<>();
                for (Animal sire : known.animals(Sex.MALE).keySet()) {
                    for (Animal dam : known.animals(Sex.FEMALE).keySet()) {
                        Map<Kit, Probability> kits = new LinkedHashMap<>();
                        new Mating(genome, sire, dam).conceived().forEach((animal, share) -> {
                            if (!share.isZero()) {
                                Kit kit = new Kit(animal.sex(), genome.genotype(animal));
                                animals.putIfAbsent(kit, animal);
                                kits.merge(kit, share, Probability::plus);
                            }
                        });
                        couples.add(kits);
                    }
                }
                return couples;
            });
        }
    }
}
