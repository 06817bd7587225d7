package org.geneticsrules.patch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.RandomDistribution;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.ObjectNode;
import org.geneticsrules.json.DocumentReader;
import org.geneticsrules.json.Documents;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelDocument;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.testing.RandomPatches;
import org.junit.jupiter.api.Test;

/**
 * Patches that touch different statements commute, and a patched model is the base with exactly the stated statements changed.
 *
 * <p>Half of the statements of a random model are set to those of another, half of the rest are taken out, and these changes are dealt
 * to up to three patches. Most patched models are unsound; then the outcome is the same refusal.
 */
@Once
class PatchLaws {

    private static final DocumentReader READER = Documents.reader();

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs()
                .between(0, Long.MAX_VALUE / 2)
                .withDistribution(RandomDistribution.uniform())
                .withoutEdgeCases();
    }

    /** Every whole statement of a model that lies in no other. */
    private static Map<String, Node> statements(Model model) {
        Map<String, Node> statements = new LinkedHashMap<>();
        ((ObjectNode) ModelDocument.of(model)).members().forEach((kind, part) -> {
            if (Set.of("loci", "traits", "masks", "populations", "evidence").contains(kind)) {
                ((ObjectNode) part).members().forEach((name, one) -> statements.put(Pointer.of(kind, name), one));
            }
        });
        return statements;
    }

    /** Random patches of one base, no two of which touch one statement. */
    private static List<Patch> patches(Model base, Random random) {
        Map<String, Node> own = statements(base);
        // Statements of a model of another seed but of equal names; the evidence is named alike in all random models.
        Map<String, Node> others = statements(RandomModels.model(random.nextLong(), RandomModels.Size.FULL));
        int count = 1 + random.nextInt(3);
        List<Map<String, Node>> set = new ArrayList<>();
        List<List<String>> remove = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            set.add(new LinkedHashMap<>());
            remove.add(new ArrayList<>());
        }
        // A few changes leave many models sound; many changes reach more of the refusals.
        int rarity = 2 + random.nextInt(8);
        Set<String> names = new LinkedHashSet<>(own.keySet());
        others.keySet().stream().filter(name -> !name.startsWith("/loci")).forEach(names::add);
        for (String name : names) {
            int patch = random.nextInt(count);
            if (random.nextInt(rarity) > 0) {
                continue;
            }
            if (others.containsKey(name) && random.nextBoolean()) {
                set.get(patch).put(name, others.get(name));
            } else if (own.containsKey(name) && random.nextBoolean()) {
                set.get(patch).put(name, own.get(name));
            } else if (own.containsKey(name)) {
                remove.get(patch).add(name);
            }
        }
        List<Patch> patches = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            patches.add(new Patch(
                    "random.patch" + i,
                    "1",
                    Optional.empty(),
                    base.reference(),
                    ImmutableMap.of(),
                    set.get(i),
                    remove.get(i),
                    ImmutableMap.of()));
        }
        return patches;
    }

    /** The model as its canonical document, or the problems. */
    private static Object outcome(Model base, List<Patch> patches) {
        try {
            return Canonical.text(ModelDocument.of(READER.apply(base, patches)));
        } catch (ProblemsException e) {
            return e.problems().stream().map(Problem::toString).toList();
        }
    }

    static boolean orderDoesNotMatter(Model base, List<Patch> patches, Random random) {
        Object outcome = outcome(base, patches);
        List<Patch> shuffled = new ArrayList<>(patches);
        Collections.shuffle(shuffled, random);
        assertEquals(outcome, outcome(base, shuffled));
        return outcome instanceof String;
    }

    /** One patch that states all changes in any order gives what the patches give together, but for what the model is called. */
    static void patchesAreTheirSum(Model base, List<Patch> patches, Random random) {
        List<Patch> shuffled = new ArrayList<>(patches);
        Collections.shuffle(shuffled, random);
        Map<String, Node> set = new LinkedHashMap<>();
        List<String> remove = new ArrayList<>();
        shuffled.forEach(patch -> {
            set.putAll(patch.set());
            remove.addAll(patch.remove());
        });
        Patch sum = new Patch(
                "random.sum",
                "1",
                Optional.empty(),
                base.reference(),
                ImmutableMap.of(),
                set,
                remove,
                ImmutableMap.of());
        Optional<Node> together = document(base, patches);
        assertEquals(
                together.map(PatchLaws::unnamed),
                document(base, ImmutableList.of(sum)).map(PatchLaws::unnamed));
    }

    /** The edit itself, told from the reading of its outcome: every statement is as stated, and all others are as they were. */
    static void onlyWhatIsStatedChanges(Model base, List<Patch> patches) {
        Optional<Node> document = document(base, patches);
        if (document.isEmpty()) {
            return;
        }
        Map<String, Node> expected = statements(base);
        patches.forEach(patch -> {
            expected.putAll(patch.set());
            expected.keySet().removeAll(patch.remove());
        });
        Map<String, Node> found = new LinkedHashMap<>();
        ((ObjectNode) document.get()).members().forEach((kind, part) -> {
            if (Set.of("loci", "traits", "masks", "populations", "evidence").contains(kind)) {
                ((ObjectNode) part).members().forEach((name, one) -> found.put(Pointer.of(kind, name), one));
            }
        });
        assertEquals(expected, found);
    }

    static void undoingGivesTheBase(Model base, List<Patch> patches) {
        Patch patch = patches.get(0);
        Model patched;
        try {
            patched = READER.apply(base, ImmutableList.of(patch));
        } catch (ProblemsException e) {
            return;
        }
        Map<String, Node> before = statements(base);
        Map<String, Node> set = new LinkedHashMap<>();
        List<String> remove = new ArrayList<>();
        patch.changes().keySet().forEach(pointer -> {
            if (before.containsKey(pointer)) {
                set.put(pointer, before.get(pointer));
            } else {
                remove.add(pointer);
            }
        });
        Patch back = new Patch(
                base.id(),
                base.version(),
                Optional.empty(),
                patched.reference(),
                ImmutableMap.of(),
                set,
                remove,
                ImmutableMap.of());
        boolean addsLocus = set.keySet().stream()
                .anyMatch(pointer -> pointer.startsWith("/loci/")
                        && !patched.loci().containsKey(Pointer.names(pointer).get(1)));
        if (!addsLocus) {
            assertEquals(
                    unnamed(ModelDocument.of(base)),
                    unnamed(ModelDocument.of(READER.apply(patched, ImmutableList.of(back)))));
        }
    }

    private static Optional<Node> document(Model base, List<Patch> patches) {
        try {
            return Optional.of(Patches.apply(base, patches).document());
        } catch (ProblemsException e) {
            return Optional.empty();
        }
    }

    /** Without what tells where it comes from. */
    private static Node unnamed(Node document) {
        Map<String, Node> members = new LinkedHashMap<>(((ObjectNode) document).members());
        members.keySet().removeAll(Set.of("id", "version", "title", "derivedFrom"));
        return new ObjectNode(members);
    }

    /**
     * Two patches that a person might write give together what they give one after the other, either way round; or they touch one
     * statement, and are refused for that, whatever else is wrong with them.
     *
     * @return whether they touch different statements and are sound together
     */
    static boolean oneAfterTheOther(Model base, Patch one, Patch other) {
        Object together = outcome(base, ImmutableList.of(one, other));
        boolean overlap = one.changes().keySet().stream()
                .anyMatch(mine -> other.changes().keySet().stream()
                        .anyMatch(theirs ->
                                mine.equals(theirs) || mine.startsWith(theirs + "/") || theirs.startsWith(mine + "/")));
        if (overlap) {
            assertTrue(
                    assertThrows(ProblemsException.class, () -> READER.apply(base, ImmutableList.of(one, other)))
                            .problems()
                            .stream()
                            .anyMatch(problem -> problem.code().equals("patches-overlap")),
                    together::toString);
            return false;
        }
        Optional<String> expected = sound(base, ImmutableList.of(one, other));
        assertEquals(expected, after(base, one, other));
        assertEquals(expected, after(base, other, one));
        return expected.isPresent();
    }

    private static Optional<String> after(Model base, Patch first, Patch second) {
        Model between = READER.apply(base, ImmutableList.of(first));
        Patch rebased = new Patch(
                second.id(),
                second.version(),
                second.title(),
                between.reference(),
                second.evidence(),
                second.set(),
                second.remove(),
                second.baseline());
        return sound(between, ImmutableList.of(rebased));
    }

    private static Optional<String> sound(Model base, List<Patch> patches) {
        try {
            return Optional.of(Canonical.text(unnamed(ModelDocument.of(READER.apply(base, patches)))));
        } catch (ProblemsException e) {
            return Optional.empty();
        }
    }

    private static Optional<Boolean> twoOfOneModel(long seed) {
        Model base = RandomModels.whole(seed);
        Optional<RandomPatches.Drawn> one = RandomPatches.draw(base, 2 * seed);
        Optional<RandomPatches.Drawn> other = RandomPatches.draw(base, 2 * seed + 1);
        return one.flatMap(mine -> other.map(theirs -> oneAfterTheOther(base, mine.patch(), theirs.patch())));
    }

    @Property(tries = 60)
    void patches_of_the_whole_language_commute(@ForAll("seeds") long seed) {
        twoOfOneModel(seed);
    }

    @Test
    void many_pairs_of_patches_of_the_whole_language_touch_different_statements() {
        int apart = 0;
        int touching = 0;
        for (long seed = 0; seed < 75; seed++) {
            Optional<Boolean> found = twoOfOneModel(seed);
            apart += found.filter(disjoint -> disjoint).isPresent() ? 1 : 0;
            touching += found.filter(disjoint -> !disjoint).isPresent() ? 1 : 0;
        }
        assertTrue(apart > 30, apart + " are apart");
        assertTrue(touching > 5, touching + " touch or contradict each other");
    }

    /** The laws would say little if every random patch were refused. */
    @Test
    void many_random_patches_give_sound_models() {
        int sound = 0;
        for (int seed = 0; seed < 200; seed++) {
            Model base = RandomModels.model(seed, RandomModels.Size.FULL);
            Random random = new Random(seed);
            sound += orderDoesNotMatter(base, patches(base, random), random) ? 1 : 0;
        }
        assertTrue(sound > 50 && sound < 190, sound + " of 200 are sound");
    }

    @Property(tries = 200)
    void patches(@ForAll("seeds") long seed) {
        Model base = RandomModels.model(seed, RandomModels.Size.FULL);
        Random random = new Random(seed);
        List<Patch> patches = patches(base, random);
        orderDoesNotMatter(base, patches, random);
        patchesAreTheirSum(base, patches, random);
        onlyWhatIsStatedChanges(base, patches);
        undoingGivesTheBase(base, patches);
    }
}
