package club.emberwell.grid.photo;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;

/** Rows of photos of grids. */
@ApplicationScoped
class GridPhotoRepository implements PanacheRepositoryBase<GridPhotoEntity, UUID> {}
