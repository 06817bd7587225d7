package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.Node.ObjectNode;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.json.Documents;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelDocument;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Sex;

/** Sound patches of random models, each of one kind of change or two, as a person would write them. */
public final class RandomPatches {

    /** What a patch changes. */
    public enum Kind {
        /** What the alleles of a locus show, alone and together. */
        DOMINANCE,
        /** How often linked loci recombine. */
        RECOMBINATION,
        /** In which order loci lie, or whether they are linked at all. */
        MAP,
        /** What a case makes of a trait, by chance or for certain. */
        CHANCE,
        /** What a mask covers. */
        MASK,
        /** A case, an {@code otherwise}, a mask or a statement about viability less. */
        REMOVAL,
        /** A locus more, with a mask that reads it. */
        ADDED_LOCUS,
        /** A statement about viability more. */
        VIABILITY,
        /** Mutation at a locus. */
        MUTATION
    }

    /**
     * A patch and what it does.
     *
     * @param patch the patch
     * @param patched the base with it applied
     * @param kinds what it changes
     */
    public record Drawn(Patch patch, Model patched, Set<Kind> kinds) {}

    private static final int MOST_ATTEMPTS = 60;
    private static final List<String> FRACTIONS = List.of("0", "1/10", "1/4", "2/5", "1/2");

    private final Model base;
    private final SplittableRandom random;
    private final Map<String, Node> set = new LinkedHashMap<>();
    private final List<String> remove = new ArrayList<>();
    private final Map<String, String> baseline = new LinkedHashMap<>();

    private RandomPatches(Model base, SplittableRandom random) {
        this.base = base;
        this.random = random;
    }

    /**
     * Draws a patch that gives a sound model.
     *
     * @param base a model
     * @param seed any number
     * @return the patch; empty if none of many attempts was sound
     */
    public static Optional<Drawn> draw(Model base, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int attempt = 0; attempt < MOST_ATTEMPTS; attempt++) {
            RandomPatches patch = new RandomPatches(base, random);
            Set<Kind> kinds = new LinkedHashSet<>();
            int count = random.nextInt(3) == 0 ? 2 : 1;
            for (int i = 0; i < count; i++) {
                Kind kind = RandomLocus.pick(random, List.of(Kind.values()));
                if (kinds.add(kind)) {
                    patch.change(kind);
                }
            }
            Optional<Drawn> sound = patch.finish("random.patch" + seed, kinds);
            if (sound.isPresent()) {
                return sound;
            }
        }
        return Optional.empty();
    }

    private Optional<Drawn> finish(String id, Set<Kind> kinds) {
        if (set.isEmpty() && remove.isEmpty()) {
            return Optional.empty();
        }
        try {
            Patch patch = new Patch(id, "1", Optional.empty(), base.reference(), Map.of(), set, remove, baseline);
            return Optional.of(new Drawn(patch, Documents.reader().apply(base, List.of(patch)), kinds));
        } catch (ProblemsException unsound) {
            return Optional.empty();
        }
    }

    private void change(Kind kind) {
        switch (kind) {
            case DOMINANCE -> dominance(locus());
            case RECOMBINATION ->
                group().ifPresent(group -> set.put(group.pointer(), recombining(group, group.loci())));
            case MAP -> map();
            case CHANCE ->
                chance(RandomLocus.pick(random, new ArrayList<>(base.rules().values())));
            case MASK -> mask().ifPresent(this::covers);
            case REMOVAL -> removal();
            case ADDED_LOCUS -> addedLocus();
            case VIABILITY -> viability(locus());
            case MUTATION -> mutation(locus());
        }
    }

    private Locus locus() {
        return RandomLocus.pick(random, new ArrayList<>(base.loci().values()));
    }

    private Optional<LinkageGroup> group() {
        List<LinkageGroup> linked = base.groups().values().stream()
                .filter(group -> group.loci().size() > 1 && group.transmission().recombines())
                .toList();
        return linked.isEmpty() ? Optional.empty() : Optional.of(RandomLocus.pick(random, linked));
    }

    private Optional<Mask> mask() {
        return base.masks().isEmpty()
                ? Optional.empty()
                : Optional.of(
                        RandomLocus.pick(random, new ArrayList<>(base.masks().values())));
    }

    private void dominance(Locus locus) {
        set.put(
                Pointer.of("loci", locus.id(), "dominance"),
                locus.expressions().size() > 1 && random.nextInt(4) == 0
                        ? new ObjectBuilder()
                                .with(Sex.FEMALE.word(), shows(locus))
                                .with(Sex.MALE.word(), shows(locus))
                                .build()
                        : shows(locus));
    }

    private Node shows(Locus locus) {
        List<String> alleles = List.copyOf(locus.alleles().keySet());
        ObjectBuilder shows = new ObjectBuilder();
        for (int i = 0; i < alleles.size(); i++) {
            shows.with(alleles.get(i), RandomLocus.pick(random, locus.expressions()));
            for (int j = i + 1; j < alleles.size() && locus.transmission().recombines(); j++) {
                shows.with(alleles.get(i) + "/" + alleles.get(j), RandomLocus.pick(random, locus.expressions()));
            }
        }
        return new ObjectBuilder().with("shows", shows.build()).build();
    }

    private Node recombining(LinkageGroup group, List<String> loci) {
        ObjectBuilder node = new ObjectBuilder();
        if (group.transmission() != Transmission.AUTOSOMAL) {
            node.with("transmission", group.transmission().word());
        }
        node.with("loci", Node.texts(loci));
        boolean apart = group.transmission() == Transmission.AUTOSOMAL && random.nextInt(3) == 0;
        return node.with(
                        "recombination",
                        apart
                                ? new ObjectBuilder()
                                        .with("female", fractions(loci.size() - 1))
                                        .with("male", fractions(loci.size() - 1))
                                        .build()
                                : fractions(loci.size() - 1))
                .build();
    }

    private Node fractions(int intervals) {
        List<String> fractions = new ArrayList<>();
        for (int i = 0; i < intervals; i++) {
            fractions.add(RandomLocus.pick(random, FRACTIONS));
        }
        return Node.texts(fractions);
    }

    /** Another order of loci, or loci that are linked only before or only after. */
    private void map() {
        Optional<LinkageGroup> linked = group();
        List<String> free = base.loci().keySet().stream()
                .filter(locus -> base.groupOf(locus).isEmpty())
                .toList();
        if (linked.isPresent() && random.nextInt(3) > 0) {
            LinkageGroup group = linked.get();
            if (group.transmission() == Transmission.AUTOSOMAL && random.nextBoolean()) {
                remove.add(group.pointer());
            } else {
                List<String> loci = new ArrayList<>(group.loci());
                loci.add(random.nextInt(loci.size()), loci.remove(random.nextInt(loci.size())));
                set.put(group.pointer(), recombining(group, loci));
            }
        } else if (free.size() > 1) {
            LinkageGroup group = LinkageGroup.single(Transmission.AUTOSOMAL, "new");
            set.put(Pointer.of("groups", "new"), recombining(group, free));
        }
    }

    private void chance(TraitRule rule) {
        List<String> cases = rule.cases().stream().map(one -> one.id()).toList();
        boolean rest = cases.isEmpty() || (rule.otherwise().isPresent() && random.nextInt(3) == 0);
        String pointer = rest
                ? Pointer.of("traits", rule.trait(), "otherwise")
                : Pointer.of("traits", rule.trait(), "cases", RandomLocus.pick(random, cases));
        Map<String, Node> kept = new LinkedHashMap<>();
        if (!rest) {
            kept.put("when", at(pointer + "/when"));
        }
        if (random.nextInt(3) == 0) {
            kept.put("state", Node.text(RandomLocus.pick(random, rule.states())));
        } else {
            int parts = random.nextInt(1, 4);
            List<String> states = rule.states();
            ObjectBuilder chance = new ObjectBuilder();
            chance.with(states.get(0), parts + "/4").with(states.get(1), (4 - parts) + "/4");
            kept.put("chance", chance.build());
        }
        set.put(pointer, new ObjectNode(kept));
    }

    private void covers(Mask mask) {
        ObjectBuilder covers = new ObjectBuilder();
        mask.covers().keySet().forEach(trait -> covers.with(trait, RandomLocus.pick(random, base.states(trait))));
        Map<String, Node> changed = new LinkedHashMap<>(members(at(Pointer.of("masks", mask.id()))));
        changed.put("covers", covers.build());
        set.put(Pointer.of("masks", mask.id()), new ObjectNode(changed));
    }

    private void removal() {
        List<String> can = new ArrayList<>();
        base.masks().keySet().forEach(mask -> can.add(Pointer.of("masks", mask)));
        base.viability().keySet().forEach(one -> can.add(Pointer.of("viability", one)));
        base.rules().values().forEach(rule -> {
            rule.cases().forEach(one -> can.add(rule.pointer(one)));
            rule.otherwise().ifPresent(one -> can.add(rule.pointer(one)));
        });
        remove.add(RandomLocus.pick(random, can));
    }

    /** A recessive that covers a trait; it lies over all other masks. */
    private void addedLocus() {
        List<String> traits = new ArrayList<>(base.visibleTraits());
        String trait = RandomLocus.pick(random, traits);
        set.put(
                "/loci/New",
                new ObjectBuilder()
                        .with("alleles", Node.texts(List.of("N", "n")))
                        .with("expressions", Node.texts(List.of("on", "off")))
                        .with(
                                "dominance",
                                new ObjectBuilder()
                                        .with("order", Node.texts(List.of("N > n")))
                                        .with(
                                                "shows",
                                                new ObjectBuilder()
                                                        .with("N", "on")
                                                        .with("n", "off")
                                                        .build())
                                        .build())
                        .build());
        set.put(
                "/masks/new",
                new ObjectBuilder()
                        .with(
                                "when",
                                new ObjectBuilder()
                                        .with("New", Node.texts(List.of("off")))
                                        .build())
                        .with(
                                "covers",
                                new ObjectBuilder()
                                        .with(trait, RandomLocus.pick(random, base.states(trait)))
                                        .build())
                        .withAny("over", base.masks().keySet())
                        .build());
        baseline.put("New", random.nextBoolean() ? "N" : "n");
    }

    private void viability(Locus locus) {
        set.put(
                "/viability/new",
                new ObjectBuilder()
                        .with("locus", locus.id())
                        .with("expressions", Node.texts(List.of(RandomLocus.pick(random, locus.expressions()))))
                        .with(
                                random.nextBoolean() ? "birth" : "scored",
                                RandomLocus.pick(random, List.of("0", "1/2", "3/4")))
                        .build());
    }

    private void mutation(Locus locus) {
        List<String> alleles = List.copyOf(locus.alleles().keySet());
        if (alleles.size() > 1) {
            Map<String, Node> changed = new LinkedHashMap<>(members(at(Pointer.of("loci", locus.id()))));
            String to = random.nextBoolean() ? "1/4" : "1/10";
            changed.put(
                    "mutation",
                    new ObjectBuilder()
                            .with(
                                    alleles.get(0),
                                    new ObjectBuilder().with(alleles.get(1), to).build())
                            .build());
            set.put(Pointer.of("loci", locus.id()), new ObjectNode(changed));
        }
    }

    private Node at(String pointer) {
        Node node = ModelDocument.of(base);
        for (String name : Pointer.names(pointer)) {
            node = members(node).get(name);
        }
        return node;
    }

    private static Map<String, Node> members(Node node) {
        return ((ObjectNode) node).members();
    }
}
