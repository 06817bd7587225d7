package org.geneticsrules.pedigree;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/**
 * A pedigree taken apart into its <i>kindreds</i>: sets of animals that litters connect, each with any other of its own directly or by way of
 * others, as dam, as a male who is or may be the sire, or as kit.
 *
 * <p>What is recorded of one kindred says nothing of another, so each can be looked at by itself, and chances of all records multiply. A
 * litter inherits nothing from its foster dam: she belongs to it no more than a stranger does, and a part in which she is not has its
 * litter without her.
 *
 * <p>Kindreds are numbered from 0 in the order of their first animals. They are found by joining the members of each litter, in time
 * proportional to the records.
 *
 * <p>Immutable and thread-safe.
 */
public final class Kindreds {

    private final Pedigree whole;

    /** The kindred of each individual, by position. */
    private final int[] kindredOf;

    /** How many animals each has. */
    private final int[] sizes;

    private Kindreds(Pedigree whole, int[] kindredOf, int[] sizes) {
        this.whole = whole;
        this.kindredOf = kindredOf;
        this.sizes = sizes;
    }

    /**
     * Takes a pedigree apart.
     *
     * @param whole the records
     * @return its kindreds
     */
    public static Kindreds of(Pedigree whole) {
        Links links = whole.links;
        int[] root = new int[links.count()];
        Arrays.setAll(root, at -> at);
        for (int litter = 0; litter < links.dam.length; litter++) {
            int first = someone(links, litter);
            for (int parent : links.parents(litter)) {
                join(root, first, parent);
            }
            for (int kit : links.kits[litter]) {
                join(root, first, kit);
            }
        }
        int[] kindredOf = new int[root.length];
        int[] sizes = new int[root.length];
        int count = 0;
        for (int one = 0; one < root.length; one++) {
            int first = find(root, one);
            kindredOf[one] = first == one ? count++ : kindredOf[first];
            sizes[kindredOf[one]]++;
        }
        return new Kindreds(whole, kindredOf, Arrays.copyOf(sizes, count));
    }

    /** The animal that was stated first leads. */
    private static void join(int[] root, int one, int other) {
        int a = find(root, one);
        int b = find(root, other);
        root[Math.max(a, b)] = Math.min(a, b);
    }

    private static int find(int[] root, int at) {
        int top = at;
        while (root[top] != top) {
            root[top] = root[root[top]];
            top = root[top];
        }
        return top;
    }

    /** A member of a litter; nobody if neither a parent nor a kit of it is recorded. */
    private static int someone(Links links, int litter) {
        int[] parents = links.parents(litter);
        if (parents.length > 0) {
            return parents[0];
        }
        return links.kits[litter].length > 0 ? links.kits[litter][0] : Links.NONE;
    }

    /**
     * Returns how many kindreds there are; an animal without relatives is one by itself.
     *
     * @return their number; 0 if no animal is recorded
     */
    public int count() {
        return sizes.length;
    }

    /**
     * Returns the kindred of an individual.
     *
     * @param individual position of an individual
     * @return the number of its kindred
     */
    public int of(int individual) {
        return kindredOf[individual];
    }

    /**
     * Returns the kindred of a litter.
     *
     * @param litter position of a litter
     * @return the number of its kindred; {@link Links#NONE} if neither a parent nor a kit of it is recorded
     */
    public int ofLitter(int litter) {
        int someone = someone(whole.links, litter);
        return someone == Links.NONE ? Links.NONE : kindredOf[someone];
    }

    /**
     * Returns the records of the kindreds that some animals belong to: nothing that is recorded of any other bears on them.
     *
     * @param ids ids of animals
     * @return the part, under the id and version of the whole; the whole if every animal belongs to it
     * @throws IllegalArgumentException if an animal is not recorded
     */
    public Pedigree around(Collection<String> ids) {
        boolean[] wanted = new boolean[sizes.length];
        ids.forEach(id -> wanted[kindredOf[whole.positionOf(id)]] = true);
        int left = 0;
        int[] part = new int[sizes.length];
        for (int kindred = 0; kindred < part.length; kindred++) {
            part[kindred] = wanted[kindred] ? 0 : Links.NONE;
            left += wanted[kindred] ? 0 : 1;
        }
        return left == 0 ? whole : parts(part, 1, Links.NONE).get(0);
    }

    /**
     * Returns the kindreds, each as a pedigree of its own.
     *
     * @return {@linkplain #portions portions} of one kindred each
     */
    public List<Pedigree> each() {
        return portions(1);
    }

    /**
     * Returns the pedigree in portions of whole kindreds, in order. A litter of which neither a parent nor a kit is recorded stands in the
     * first.
     *
     * @param animals a portion is filled up to so many animals, unless its one kindred has more; at least 1
     * @return the portions, under the id and version of the whole; at least one, and the whole itself if it is only one
     * @throws IllegalArgumentException if the number of animals is below 1
     */
    public List<Pedigree> portions(int animals) {
        if (animals < 1) {
            throw new IllegalArgumentException(
                    "a portion has room for at least one animal, but is to be filled up to " + animals);
        }
        int[] part = new int[sizes.length];
        int filled = 0;
        int last = 0;
        for (int kindred = 0; kindred < part.length; kindred++) {
            if (filled > 0 && filled + sizes[kindred] > animals) {
                last++;
                filled = 0;
            }
            part[kindred] = last;
            filled += sizes[kindred];
        }
        return last == 0 ? ImmutableList.of(whole) : parts(part, last + 1, 0);
    }

    /** Puts each kindred into a part; none where it has none. */
    private List<Pedigree> parts(int[] part, int count, int ofNobody) {
        List<PedigreeBuilder> builders = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            PedigreeBuilder builder = Pedigree.builder(whole.id(), whole.version());
            whole.catalogue().ifPresent(builder::catalogue);
            builders.add(builder);
        }
        for (int one = 0; one < kindredOf.length; one++) {
            int at = part[kindredOf[one]];
            if (at != Links.NONE) {
                builders.get(at).add(whole.individualAt(one));
            }
        }
        for (int litter = 0; litter < whole.litters().size(); litter++) {
            int kindred = ofLitter(litter);
            int at = kindred == Links.NONE ? ofNobody : part[kindred];
            if (at != Links.NONE) {
                Litter stated = whole.litterAt(litter);
                boolean elsewhere = stated.fosterDam()
                        .filter(dam -> part[kindredOf[whole.links.at(dam)]] != at)
                        .isPresent();
                builders.get(at).add(elsewhere ? born(stated) : stated);
            }
        }
        return builders.stream().map(PedigreeBuilder::build).collect(ImmutableList.toImmutableList());
    }

    /** A litter without its foster dam. */
    private static Litter born(Litter litter) {
        return new Litter(
                litter.id(),
                litter.dam(),
                litter.sires(),
                litter.born(),
                litter.bornCount(),
                litter.scoredCount(),
                Optional.empty(),
                litter.kits(),
                litter.ascertainment());
    }
}
